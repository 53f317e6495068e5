import type { MatchAnswer, Train, Verdict } from '#libs/matching/src/index.js';

/** The id of every item that an answer of matching speaks of. */
export function idsIn({ candidates, refusals, advice, ladder }: MatchAnswer): Set<string> {
  return new Set([
    ...candidates.flatMap((candidate) => [
      ...inTrain(candidate),
      ...candidate.verdicts.flatMap(inVerdict),
      ...candidate.changeover.steps.flatMap(({ itemId }) => itemId ?? []),
      candidate.governing.itemId,
    ]),
    ...refusals.flatMap(({ frameId, failing, nearest }) => [
      frameId,
      ...failing.flatMap(inVerdict),
      ...(nearest ? inTrain(nearest) : []),
    ]),
    ...advice.flatMap(({ opensFrames, apply }) => [...opensFrames, ...(apply.change === 'item' ? [apply.itemId] : [])]),
    ...(ladder?.marks ?? []).flatMap(({ itemId }) => itemId ?? []),
  ]);
}

function inTrain({ frameId, links }: Train): string[] {
  return [frameId, ...links.flatMap(({ itemId, pool }) => [itemId, ...pool])];
}

function inVerdict({ items }: Verdict): readonly string[] {
  return items;
}
