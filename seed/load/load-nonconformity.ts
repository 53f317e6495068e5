import {
  ImpactRepository,
  insertRows,
  NonconformityEntity,
  NumberingEntity,
  upsertRows,
} from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { idOf } from '../northmoor/ids.js';
import { itemId } from '../northmoor/items.js';
import type { LabTime } from '../northmoor/lab-time.js';
import { FAILED_CELL } from '../northmoor/trouble.js';
import type { PastEvent } from './demo-rows.js';
import { personId } from './load-people.js';

/** How far back the open nonconformity reaches: before that the cell was checked and found good. */
const SINCE = [-43, '08:00'] as const;
/** Numbers of nonconformities that the lab used up before. */
const BEFORE = 7;

/** The nonconformity that the failed shift check led to, with what the cell touched. */
export async function loadNonconformity(manager: EntityManager, time: LabTime): Promise<PastEvent[]> {
  const id = idOf('nonconformity', FAILED_CELL.tag);
  const reference = `NC-${String(BEFORE).padStart(4, '0')}`;
  const since = time.past(...SINCE);
  const openedAt = time.past(-1, '14:35');
  const openedBy = personId('ruth.calloway');
  await insertRows(manager, NonconformityEntity, [
    {
      ...{ id, reference, since, openedAt, openedBy },
      itemId: itemId(FAILED_CELL.tag),
      what: FAILED_CELL.nonconformity,
      touched: await touchedBy(manager, since, openedAt),
      state: 'open',
      decision: null,
      closedAt: null,
    },
  ]);
  await upsertRows(manager, NumberingEntity, [{ name: 'nonconformity', next: BEFORE + 1 }], ['name']);
  const about = { subjectKind: 'nonconformity', subjectId: id };
  return [
    {
      ...about,
      actorId: openedBy,
      kind: 'nonconformity/opened',
      at: openedAt,
      after: { reference, tag: FAILED_CELL.tag },
    },
  ];
}

async function touchedBy(manager: EntityManager, from: Date, to: Date): Promise<NonconformityEntity['touched']> {
  const impact = new ImpactRepository(manager);
  const jobs = await impact.jobs(itemId(FAILED_CELL.tag), from, to);
  const requestIds = [...new Set(jobs.map(({ requestId }) => requestId))];
  return { jobs, reports: await impact.reports(requestIds), people: await impact.requesters(requestIds) };
}
