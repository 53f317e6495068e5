import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { WorkerConfig } from '#apps/worker/src/config.js';
import { IssueReportProcessor } from '#apps/worker/src/issue-report/issue-report.processor.js';
import { sampleReport } from '#test/support/sample-report.js';
import {
  LabRecords,
  openRecords,
  PersonEntity,
  ReportEntity,
  RequestEntity,
  TeamEntity,
} from '#libs/records/src/index.js';
import { freshDatabase } from '../support/database.js';
import { labClock } from '../support/lab-clock.js';

describe('a report that two workers draw at the same time, because one was taken for dead', () => {
  it('is issued once, and both runs end well with the file of the first', async () => {
    const database = await freshDatabase();
    const records = await openRecords(database.url, { poolSize: 4 });
    const reportId = await reportToDraw(records.manager);
    const processor = new IssueReportProcessor(new LabRecords(records, labClock), {
      publicUrl: 'http://lab.example',
    } as WorkerConfig);

    const runs = await Promise.all([processor.run({ reportId }), processor.run({ reportId })]);

    const report = await records.manager.findOneByOrFail(ReportEntity, { id: reportId });
    expect(report.state).toBe('issued');
    expect(runs.map((run) => run['sha256'])).toEqual([report.sha256, report.sha256]);
    const issued = `select 1 from record_event where kind = 'report/issued' and subject_id = $1`;
    expect(await records.query<unknown[]>(issued, [reportId])).toHaveLength(1);
    await records.destroy();
    await database.drop();
  }, 60_000);
});

/** A report that waits to be drawn, with the request and the people that it names. @returns its id */
async function reportToDraw(manager: EntityManager): Promise<string> {
  const [reportId, requestId, teamId, personId] = [randomUUID(), randomUUID(), randomUUID(), randomUUID()];
  const createdAt = new Date('2026-11-12T08:00:00Z');
  const person = { id: personId, name: 'Ian Marsh', email: 'ian.marsh@northmoor.example', roles: ['manager' as const] };
  await manager.insert(PersonEntity, { ...person, createdAt });
  await manager.insert(TeamEntity, { id: teamId, name: 'Frames' });
  const request = { id: requestId, reference: 'R-2042', title: 'Down tube', state: 'reported' as const };
  await manager.insert(RequestEntity, { ...request, teamId, requesterId: personId, createdAt });
  await manager.insert(ReportEntity, {
    ...{ id: reportId, requestId, number: 'TR-2026-0042', revision: 1, state: 'issuing', amendment: null },
    ...{
      preparedBy: personId,
      authorisedBy: personId,
      preparedAt: createdAt,
      issuedAt: new Date('2026-11-12T09:00:00Z'),
    },
    document: sampleReport(),
  } as never);
  return reportId;
}
