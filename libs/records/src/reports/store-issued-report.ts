import { StoredFileRepository } from '../exchange/stored-file.repository.js';
import { updateRows } from '../platform/write-rows.js';
import { act } from '../record/act.js';
import type { Stage } from '../record/act.js';
import { RequestEntity } from '../requests/request.entity.js';
import type { ReportEntity } from './report.entity.js';
import { ReportRepository } from './report.repository.js';

/**
 * Keeps the file of an authorised report: from here on it is issued, the revision before it superseded, and its request reported.
 *
 * @returns the SHA-256 of the file
 * @throws LabError `report/changed-meanwhile` when another run was quicker
 */
export function storeIssuedReport(stage: Stage, report: ReportEntity, content: Buffer): Promise<string> {
  const { id, number, revision, requestId } = report;
  return act(stage, null, async ({ manager, record, now }) => {
    const reports = new ReportRepository(manager);
    const name = revision === 1 ? `${number}.pdf` : `${number}-rev${revision}.pdf`;
    const file = await new StoredFileRepository(manager).store({
      name,
      mediaType: 'application/pdf',
      content,
      storedBy: report.authorisedBy!,
      storedAt: now(),
    });
    await reports.change(report, 'issuing', { state: 'issued', fileId: file.id, sha256: file.sha256 });
    for (const before of await reports.ofNumber(number)) {
      if (before.revision < revision && before.state === 'issued')
        await reports.change(before, 'issued', { state: 'superseded' });
    }
    const changed = await updateRows(
      manager,
      RequestEntity,
      { id: requestId, state: 'in-review' },
      { state: 'reported' },
    );
    await record({
      kind: 'report/issued',
      subjectId: id,
      after: { number, revision, sha256: file.sha256, sizeBytes: content.length },
    });
    if (changed === 1) {
      await record({
        kind: 'request/reported',
        subjectId: requestId,
        before: { state: 'in-review' },
        after: { state: 'reported', number },
      });
    }
    return file.sha256;
  });
}
