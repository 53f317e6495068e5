/** A job that holds a frame and items now. */
export interface HeldByJob {
  id: string;
  reference: string;
  frameId: string | null;
  train: readonly { itemId: string }[];
  /** Ids of all that hangs on its frame, of the train or not. */
  fitted: readonly string[];
}

/** By item id (frames too), the job that has it now, by name. */
export type InUse = ReadonlyMap<string, string>;

/**
 * Frames and items that jobs hold now: what is in their trains, and whatever else hangs on a frame that is at work.
 *
 * @param except a job that may use what it holds itself
 */
export function inUse(held: readonly HeldByJob[], except?: string): InUse {
  const others = held.filter(({ id }) => id !== except);
  const items = others.flatMap(({ reference, frameId, fitted, train }) =>
    [...(frameId === null ? [] : [frameId]), ...fitted, ...train.map(({ itemId }) => itemId)].map(
      (itemId) => [itemId, reference] as const,
    ),
  );
  return new Map(items);
}
