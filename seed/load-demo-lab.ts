import { hash } from '@node-rs/argon2';
import { announce, lockWhile, TeamEntity, touchFacts } from '#libs/records/src/index.js';
import type { DataSource, EntityManager } from 'typeorm';
import { MATERIALS } from './library/materials.js';
import { METHODS } from './library/methods.js';
import { loadNonconformity } from './load/load-nonconformity.js';
import { loadPeople, teamId } from './load/load-people.js';
import { loadRegister } from './load/load-register.js';
import { loadRequests, writeEvents } from './load/load-requests.js';
import { addMaterials, addMethods } from './load/load-library.js';
import { loadReports } from './load/load-reports.js';
import type { WriteReport } from './load/load-reports.js';
import { HOUSE_METHODS } from './northmoor/house-methods.js';
import { LabTime } from './northmoor/lab-time.js';
import { DEMO_PASSWORD, TEAMS } from './northmoor/people.js';

export type { PastReport, WriteReport } from './load/load-reports.js';

/**
 * Loads the demo lab of Northmoor Cycles, all or nothing. Doing it again changes nothing.
 *
 * @param nowMs the first start, UTC ms; every date of the demo is told from it
 * @param write writes the past reports; without it there are none
 */
export async function loadDemoLab(records: DataSource, nowMs: number, write?: WriteReport): Promise<void> {
  const passwordHash = await hash(DEMO_PASSWORD);
  await records.transaction(async (manager) => {
    await lockWhile(manager, 'demo lab'); // two processes that start together load it once
    if (!(await isLoaded(manager))) await load(manager, new LabTime(nowMs), passwordHash, write);
  });
}

function isLoaded(manager: EntityManager): Promise<boolean> {
  return manager.existsBy(TeamEntity, { id: teamId(TEAMS[0]) });
}

async function load(manager: EntityManager, time: LabTime, passwordHash: string, write?: WriteReport): Promise<void> {
  const methods = [...METHODS, ...HOUSE_METHODS];
  await addMethods(manager, methods, time.now);
  await addMaterials(manager, MATERIALS);
  await loadPeople(manager, time, methods, passwordHash);
  const aboutItems = await loadRegister(manager, time);
  const requests = await loadRequests(manager, time, methods);
  const aboutReports = write ? await loadReports(manager, requests, write) : [];
  const aboutTrouble = await loadNonconformity(manager, time);
  await writeEvents(manager, [
    ...aboutItems,
    ...requests.flatMap(({ events }) => events),
    ...aboutReports,
    ...aboutTrouble,
  ]);
  const because = 'the demo lab was loaded';
  await touchFacts(manager, because);
  await announce(manager, 'replan', { because, byId: null }, { key: 'replan' });
}
