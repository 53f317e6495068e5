import { leftOnFrame } from '#libs/bench/src/index.js';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { RigRepository, TroubleRepository } from '#libs/records/src/index.js';
import type { JobEntity } from '#libs/records/src/index.js';
import type { AtWork, Done } from '../job/job-acts.js';

type MovedTo = 'running' | 'paused' | 'blocked' | 'ready' | 'done' | 'aborted';

/** A transition as it goes into the record. */
export function moved(
  job: Pick<JobEntity, 'state'>,
  to: MovedTo,
  after: Record<string, unknown>,
  why: string | null,
): Done {
  return { kind: `job/${to}`, before: { state: job.state }, after: { state: to, ...after }, why };
}

/** A train that was half fitted hangs there half fitted; a whole one is the rig already. */
export async function leaveFrame({ manager, job, now }: AtWork): Promise<void> {
  if (job.state !== 'taken' || job.frameId === null) return;
  const rigs = new RigRepository(manager);
  await rigs.fit(job.frameId, leftOnFrame(job, await rigs.of(job.frameId)), now());
}

/**
 * The item that failed is not used from now on, until it is repaired.
 *
 * @throws InvalidInput for an item that is not part of the job
 */
export async function openFault(
  { manager, job, by, now, record }: AtWork,
  itemId: string,
  what: string,
): Promise<void> {
  if (itemId !== job.frameId && !job.train.some((link) => link.itemId === itemId)) {
    throw new InvalidInput([
      fieldProblem({ field: 'itemId', found: itemId, allowed: 'the frame or an item of the train', unit: '' }),
    ]);
  }
  const faultId = await new TroubleRepository(manager).openFault(itemId, what, by.id, now());
  await record({ kind: 'item/fault-opened', subjectId: itemId, after: { faultId, what, jobId: job.id } });
}
