import { randomBytes, randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import { hashPassword } from '#apps/api/src/platform/sessions.service.js';
import { addPerson, append, hasPeople } from '#libs/records/src/index.js';
import { loadDemoLab } from '#seed/load-demo-lab.js';
import { loadLibrary } from '#seed/load/load-library.js';
import { writePastReport } from './write-past-report.js';

export interface FirstManager {
  email: string;
  password: string;
}

/**
 * Fills a database in which nobody is yet: with the demo lab, or with published methods and materials and one manager.
 *
 * @returns the manager of an empty lab, whose password is told this once
 */
export async function fillOnFirstStart(records: DataSource, empty: boolean): Promise<FirstManager | null> {
  if (await hasPeople(records.manager)) return null;
  if (empty) return startEmpty(records);
  await loadDemoLab(records, Date.now(), writePastReport);
  return null;
}

async function startEmpty(records: DataSource): Promise<FirstManager> {
  await loadLibrary(records);
  const manager = { email: 'manager@lab.example', password: randomBytes(12).toString('base64url') };
  const passwordHash = await hashPassword(manager.password);
  await records.transaction(async (entities) => {
    const id = randomUUID();
    await addPerson(entities, { id, name: 'First manager', email: manager.email, roles: ['manager'], passwordHash });
    await append(entities, {
      actorId: null,
      kind: 'person/added',
      subjectKind: 'person',
      subjectId: id,
      why: 'first start',
    });
  });
  return manager;
}
