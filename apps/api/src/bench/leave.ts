import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { recordAct, RigRepository, TroubleRepository } from '#libs/records/src/index.js';
import type { JobEntity, RigLinkEntity } from '#libs/records/src/index.js';
import type { AtWork, Done } from './job-acts.js';
import { takenOffKey } from './setup-sheet.js';

/** A transition as it goes into the record. */
export function moved(
  job: JobEntity,
  to: string,
  after: Record<string, unknown>,
  why: string | null,
  planning: boolean,
): Done {
  return { kind: `job/${to}`, before: { state: job.state }, after: { state: to, ...after }, why, planning };
}

/** A train that was half fitted hangs there half fitted; a whole one is the rig already. */
export async function leaveFrame({ manager, job }: AtWork): Promise<void> {
  if (job.state !== 'taken' || job.frameId === null) return;
  const rigs = new RigRepository(manager);
  await rigs.fit(job.frameId, leftOnFrame(job, await rigs.of(job.frameId)));
}

/**
 * The item that failed is not used from now on, until it is repaired.
 *
 * @throws InvalidInput for an item that is not part of the job
 */
export async function openFault({ manager, job, by }: AtWork, itemId: string, what: string): Promise<void> {
  if (itemId !== job.frameId && !job.train.some((link) => link.itemId === itemId)) {
    throw new InvalidInput([
      fieldProblem({ field: 'itemId', found: itemId, allowed: 'the frame or an item of the train', unit: '' }),
    ]);
  }
  const faultId = await new TroubleRepository(manager).openFault(itemId, what, by.id);
  await recordAct(manager, {
    ...{ actorId: by.id, kind: 'item/fault-opened', subjectKind: 'item', subjectId: itemId, live: 'items' },
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
