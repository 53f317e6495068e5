import type { JobEntity, RigLinkEntity } from '#libs/records/src/index.js';

/** By item id (frames too), the job that has it now, by name. */
export type InUse = ReadonlyMap<string, string>;

/**
 * Frames and items that jobs hold now: what is in their trains, and whatever else hangs on a frame that is at work.
 *
 * @param except a job that may use what it holds itself
 */
export function inUse(onFrames: readonly JobEntity[], rigs: readonly RigLinkEntity[], except?: string): InUse {
  const others = onFrames.filter(({ id }) => id !== except);
  const held = others.flatMap((job) =>
    [
      ...(job.frameId === null
        ? []
        : [job.frameId, ...rigs.filter(({ frameId }) => frameId === job.frameId).map(({ itemId }) => itemId)]),
      ...job.train.map(({ itemId }) => itemId),
    ].map((itemId) => [itemId, job.reference] as const),
  );
  return new Map(held);
}
