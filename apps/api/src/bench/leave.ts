import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { RigRepository, TroubleRepository } from '#libs/records/src/index.js';
import type { JobEntity, RigLinkEntity } from '#libs/records/src/index.js';
import type { AtWork, Done } from './job-acts.js';
import { takenOffKey } from './setup-sheet.js';

/** A transition as it goes into the record. */
export function moved(
  job: JobEntity,
  to: 'ready' | 'running' | 'paused' | 'blocked' | 'done' | 'aborted',
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
  await record({
    kind: 'item/fault-opened',
    subjectId: itemId,
    after: { faultId, what, jobId: job.id },
  });
}

/** What hangs on the frame when work stops: what hung there and was not taken off, and what of the train was confirmed. */
function leftOnFrame({ train, checks }: JobEntity, rig: readonly RigLinkEntity[]): { itemId: string; role: string }[] {
  const stayed = rig.filter(({ itemId }) => !(takenOffKey(itemId) in checks));
  const added = train.filter(
    ({ itemId, confirmedAt }) => confirmedAt && !stayed.some((link) => link.itemId === itemId),
  );
  return [...stayed, ...added].map(({ itemId, role }) => ({ itemId, role }));
}
