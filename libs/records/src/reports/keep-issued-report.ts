import type { DataSource } from 'typeorm';
import { StoredFileRepository } from '../exchange/stored-file.repository.js';
import { recordAct } from '../register/record-act.js';
import { RequestEntity } from '../requests/request.entity.js';
import type { ReportEntity } from './report.entity.js';
import { ReportRepository } from './report.repository.js';

/**
 * Keeps the file of an authorised report: from here on it is issued, the revision before it superseded, and its request reported.
 *
 * @returns the SHA-256 of the file
 * @throws LabError `report/changed-meanwhile` when another run was quicker
 */
export function keepIssuedReport(records: DataSource, report: ReportEntity, content: Buffer): Promise<string> {
  const { id, number, revision, requestId } = report;
  return records.transaction(async (manager) => {
    const reports = new ReportRepository(manager);
    const name = revision === 1 ? `${number}.pdf` : `${number}-rev${revision}.pdf`;
    const file = await new StoredFileRepository(manager).keep({
      name,
      mediaType: 'application/pdf',
      content,
      storedBy: report.authorisedBy!,
    });
    await reports.change(report, 'issuing', { state: 'issued', fileId: file.id, sha256: file.sha256 });
    for (const before of await reports.ofNumber(number)) {
      if (before.revision < revision && before.state === 'issued')
        await reports.change(before, 'issued', { state: 'superseded' });
    }
    const { affected } = await manager.update(
      RequestEntity,
      { id: requestId, state: 'in-review' },
      { state: 'reported' },
    );
    await recordAct(manager, {
      ...{ actorId: null, kind: 'report/issued', subjectKind: 'report', subjectId: id, live: 'reports' },
      after: { number, revision, sha256: file.sha256, sizeBytes: content.length },
    });
    if (affected === 1) {
      await recordAct(manager, {
        ...{ actorId: null, kind: 'request/reported', subjectKind: 'request', subjectId: requestId, live: 'requests' },
        ...{ before: { state: 'in-review' }, after: { state: 'reported', number } },
      });
    }
    return file.sha256;
  });
}
