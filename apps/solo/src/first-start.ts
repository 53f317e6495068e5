import { randomBytes, randomUUID } from 'node:crypto';
import { hashPassword } from '#apps/api/src/platform/sessions.service.js';
import { addPerson, hasPeople } from '#libs/records/src/index.js';
import type { LabRecords } from '#libs/records/src/index.js';
import { loadDemoLab } from '#seed/load-demo-lab.js';
import { loadLibrary } from '#seed/load/load-library.js';
import { writePastReport } from './write-past-report.js';

export interface FirstManager {
  email: string;
  password: string;
}

/**
 * Fills a database in which nobody is yet: with the demo lab, or with published methods and materials and one manager. A lab that is
 * at work already is given what has been put right in the library since.
 *
 * @returns the manager of an empty lab, whose password is told this once
 */
export async function fillOnFirstStart(records: LabRecords, empty: boolean): Promise<FirstManager | null> {
  if (await hasPeople(records.manager)) {
    await loadLibrary(records.source, records.clock.now());
    return null;
  }
  if (empty) return startEmpty(records);
  await loadDemoLab(records.source, records.clock.nowMs(), writePastReport);
  return null;
}

async function startEmpty(records: LabRecords): Promise<FirstManager> {
  await loadLibrary(records.source, records.clock.now());
  const manager = { email: 'manager@lab.example', password: randomBytes(12).toString('base64url') };
  const passwordHash = await hashPassword(manager.password);
  await records.act(null, async (act) => {
    const { email } = manager;
    const row = { id: randomUUID(), name: 'First manager', email, passwordHash, createdAt: act.now() };
    await addPerson(act.manager, { ...row, roles: ['manager'] });
    await act.record({ kind: 'person/added', subjectId: row.id, why: 'first start' });
  });
  return manager;
}
