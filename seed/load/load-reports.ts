import type { ReportDocument } from '#libs/contract/src/index.js';
import { announce, insertRows, NumberingEntity, ReportEntity, upsertRows } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { idOf } from '../northmoor/ids.js';
import { PEOPLE } from '../northmoor/people.js';
import type { PastEvent, RequestRows } from './demo-rows.js';
import { personId } from './load-people.js';

/** A report that was issued in the past, before its content is written. */
export interface PastReport {
  requestId: string;
  number: string;
  revision: number;
  amendment: string | null;
  authorisedBy: { name: string; function: string };
  issuedAt: Date;
}

/** Writes the content of a report out of the record. It is handed in: how a report is written is the api's business. */
export type WriteReport = (manager: EntityManager, report: PastReport) => Promise<ReportDocument>;

const AUTHORISES = 'ruth.calloway';
const PREPARES = 'ian.marsh';
const HOURS_AFTER_TESTING = 3;
/** Reports that the lab had issued in the first of the years before the oldest one here. */
const BEFORE = 36;

/** A report that had to be amended, so many hours after it was issued, and why. */
const AMENDED = {
  title: 'Bonded lug, adhesive batch 54',
  after: 26,
  why: 'The batch of the adhesive was given as 45 instead of 54 by the customer; the results are unchanged.',
};
/** A revision is drawn after the report that it replaces. */
const REVISION_DELAY_MS = 60_000;

/** Reports of everything that was reported, numbered by their date; the worker draws their files after the start. */
export async function loadReports(
  manager: EntityManager,
  rows: readonly RequestRows[],
  write: WriteReport,
): Promise<PastEvent[]> {
  const numbers = new Map<number, number>();
  const events: PastEvent[] = [];
  for (const { requestId, title, issuedAt } of issuedOf(rows)) {
    const first = { requestId, number: nextNumber(numbers, issuedAt), revision: 1, amendment: null, issuedAt };
    events.push(...(await issue(manager, first, write)));
    if (title === AMENDED.title) events.push(...(await issue(manager, amendmentOf(first), write)));
  }
  for (const [year, last] of numbers)
    await upsertRows(manager, NumberingEntity, [{ name: `report-${year}`, next: last + 1 }], ['name']);
  return events;
}

function issuedOf(rows: readonly RequestRows[]): { requestId: string; title: string; issuedAt: Date }[] {
  return rows
    .filter(({ request }) => request.state === 'reported' || request.state === 'closed')
    .map(({ request, jobs }) => {
      const doneMs = Math.max(...jobs.map(({ finishedAt }) => finishedAt!.getTime()));
      return {
        requestId: request.id!,
        title: request.title!,
        issuedAt: new Date(doneMs + HOURS_AFTER_TESTING * 3_600_000),
      };
    })
    .sort((a, b) => a.issuedAt.getTime() - b.issuedAt.getTime());
}

/** E.g. `TR-2026-0042`; every year begins anew. */
function nextNumber(numbers: Map<number, number>, issuedAt: Date): string {
  const year = issuedAt.getUTCFullYear();
  const number = (numbers.get(year) ?? (numbers.size === 0 ? BEFORE : 0)) + 1;
  numbers.set(year, number);
  return `TR-${year}-${String(number).padStart(4, '0')}`;
}

type Unsigned = Omit<PastReport, 'authorisedBy'>;

function amendmentOf(first: Unsigned): Unsigned {
  return {
    ...first,
    revision: 2,
    amendment: AMENDED.why,
    issuedAt: new Date(first.issuedAt.getTime() + AMENDED.after * 3_600_000),
  };
}

async function issue(manager: EntityManager, report: Unsigned, write: WriteReport): Promise<PastEvent[]> {
  const { requestId, number, revision, amendment, issuedAt } = report;
  const id = idOf('report', `${number}/${revision}`);
  const name = PEOPLE.find(({ key }) => key === AUTHORISES)!.name;
  const document = await write(manager, { ...report, authorisedBy: { name, function: 'Laboratory manager' } });
  const preparedAt = new Date(issuedAt.getTime() - 3_600_000);
  await insertRows(manager, ReportEntity, [
    {
      ...{ id, requestId, number, revision, amendment, preparedAt, issuedAt },
      ...{ state: 'issuing', document, remarks: {}, fileId: null, sha256: null },
      ...{ preparedBy: personId(PREPARES), authorisedBy: personId(AUTHORISES), authorisedAt: issuedAt },
    },
  ]);
  await announce(manager, 'issue-report', { reportId: id }, { delayMs: revision > 1 ? REVISION_DELAY_MS : 0 });
  const about = { subjectKind: 'report', subjectId: id };
  return [
    { ...about, actorId: personId(PREPARES), kind: 'report/prepared', at: preparedAt, after: { requestId } },
    { ...about, actorId: personId(AUTHORISES), kind: 'report/authorised', at: issuedAt, after: { number, revision } },
  ];
}
