import { frozenDocument, storeIssuedReport, LabRecords, ReportRepository } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Inject, Injectable } from '@nestjs/common';
import type { WorkerConfig } from '../config.js';
import type { TaskProcessor } from '../platform/task-processor.js';
import { WORKER_CONFIG } from '../platform/worker-config.js';
import { drawReport } from './draw-report.js';

/** Draws the file of an authorised report and keeps it. A second run finds the report issued and leaves it, also one at the same time. */
@Injectable()
export class IssueReportProcessor implements TaskProcessor<'issue-report'> {
  readonly handles = 'issue-report';

  constructor(
    private readonly records: LabRecords,
    @Inject(WORKER_CONFIG) private readonly config: WorkerConfig,
  ) {}

  async run({ reportId }: TaskPayload<'issue-report'>): Promise<Record<string, unknown>> {
    const report = await new ReportRepository(this.records.manager).get(reportId);
    if (report.state !== 'issuing') return { reportId, state: report.state };
    const content = await drawReport(frozenDocument(report), {
      publicUrl: this.config.publicUrl,
      issuedAt: report.issuedAt ?? report.preparedAt,
    });
    const sha256 = await storeIssuedReport(this.records, report, content).catch((error: unknown) =>
      this.issuedMeanwhile(reportId, error),
    );
    return { reportId, sha256 };
  }

  /** A worker that was taken for dead may have been slow only: then two draw it, and the file of the first is the report. */
  private async issuedMeanwhile(reportId: string, error: unknown): Promise<string> {
    const { state, sha256 } = await new ReportRepository(this.records.manager).get(reportId);
    if (state !== 'issuing' && sha256 !== null) return sha256;
    throw error;
  }
}
