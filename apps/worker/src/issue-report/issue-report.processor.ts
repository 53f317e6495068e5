import type { ReportDocument } from '#libs/contract/src/index.js';
import { keepIssuedReport, ReportRepository } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { WorkerConfig } from '../config.js';
import type { TaskProcessor } from '../platform/task-processor.js';
import { WORKER_CONFIG } from '../platform/worker-config.js';
import { drawReport } from './draw-report.js';

/** Draws the file of an authorised report and keeps it. A second run finds the report issued and leaves it. */
@Injectable()
export class IssueReportProcessor implements TaskProcessor<'issue-report'> {
  readonly handles = 'issue-report';

  constructor(
    private readonly records: DataSource,
    @Inject(WORKER_CONFIG) private readonly config: WorkerConfig,
  ) {}

  async run({ reportId }: TaskPayload<'issue-report'>): Promise<Record<string, unknown>> {
    const report = await new ReportRepository(this.records.manager).get(reportId);
    if (report.state !== 'issuing') return { reportId, state: report.state };
    const document = report.document as unknown as ReportDocument;
    const content = await drawReport(document, {
      publicUrl: this.config.publicUrl,
      issuedAt: report.issuedAt ?? report.preparedAt,
    });
    const sha256 = await keepIssuedReport(this.records, report, content);
    return { reportId, sha256 };
  }
}
