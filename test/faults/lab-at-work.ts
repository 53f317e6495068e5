import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import type { BatchBody } from '#libs/contract/src/index.js';
import { hashPassword } from '#apps/api/src/platform/sessions.service.js';
import { addPerson } from '#libs/records/src/index.js';
import { allow, benchLab } from '../stories/bench-lab.js';
import { setUpLab } from '../stories/story-steps.js';
import { Client } from '../support/client.js';
import { labClock } from '../support/lab-clock.js';
import { fillWithPeople, TEST_PASSWORD } from '../support/lab.js';
import type { Lab } from '../support/lab.js';

/** Frames with a train each; as many technicians work at them. */
export const TRAINS = 3;

export const technicianEmail = (nr: number) => `hand-${nr}@northmoor.example`;

/** A person of each role, and the technicians. */
export async function fillWithTechnicians(records: DataSource): Promise<void> {
  await fillWithPeople(records);
  const passwordHash = await hashPassword(TEST_PASSWORD);
  for (let nr = 1; nr <= TRAINS; nr++) {
    const id = randomUUID();
    const [name, email, createdAt] = [`Hand ${nr}`, technicianEmail(nr), labClock.now()];
    const person = { id, name, email, roles: ['technician' as const], passwordHash, createdAt };
    await records.transaction((manager) => addPerson(manager, person));
    await allow({ records } as Lab, id);
  }
}

/** Puts frames, cells and grips into the register, by HTTP. @returns what requests ask for */
export async function furnish(baseUrl: string, records: DataSource): Promise<BatchBody> {
  const signIn = async (who: string) => {
    const client = new Client(baseUrl);
    await client.signIn(`${who}@northmoor.example`, TEST_PASSWORD);
    return client;
  };
  const { batch, manager } = await benchLab({ baseUrl, records, signIn } as unknown as Lab, TRAINS);
  await setUpLab(manager);
  return { ...batch, specimenCount: 2 };
}
