import type { Parts } from '../parts.js';
import { countBits, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { frameTally } from './frame-tally.js';
import type { IndexedFrame } from './lab-index.js';
import { ADAPTER_CHECKS, trainOf, WHOLE_CHECKS } from './whole-train.js';
import type { Search } from './whole-train.js';

/**
 * The train that comes nearest on a frame without a candidate: fewest rules failing, then least short.
 *
 * @returns null when the lab has no cell or no ends of the right kind at all
 */
export function nearestTrain({ frame, classKey }: IndexedFrame, search: Search): Parts | null {
  const own = frameTally(frame, search.context);
  const all = search.choicesFor(frame, classKey).all;
  const cells = byFails(all.cells, own.fails);
  const ends = byFails(all.ends, own.fails);
  const besides = leastByMask(all.beside);
  let best: Parts | null = null;
  let least = Infinity;
  let severity = Infinity;
  for (const { choice: cell, count: cellCount } of cells) {
    if (cellCount >= least) break;
    for (const { choice: end, count: endCount } of ends) {
      if (endCount >= least) break;
      const bits = own.fails | cell.fails | end.fails;
      if (countBits(bits) >= least) continue;
      const near = closest(bits, least, frame, cell, end, besides, search);
      const short = near && own.severity + cell.severity + end.severity + near.severity;
      if (!near || short === null || near.count > least || (near.count === least && short >= severity)) continue;
      [best, least, severity] = [near.parts, near.count, short];
    }
  }
  return best;
}

interface Near {
  parts: Parts;
  count: number;
  severity: number;
}

/** Of the trains with this cell and these ends, the one with the fewest failures: over adapters and what stands beside. */
function closest(
  bits: number,
  least: number,
  frame: Parts['frame'],
  cell: CellChoice,
  end: Choice<Parts['ends']>,
  besides: readonly BesideChoice[],
  search: Search,
): Near | null {
  let near: Near | null = null;
  for (const adapters of search.routes.joinSomehow({ frame, cell: cell.part, cellAt: cell.cellAt, ends: end.part })) {
    for (const beside of besides) {
      const known = bits | beside.fails;
      if (countBits(known) > least) continue;
      const parts = trainOf(frame, cell, end, adapters, beside);
      const whole = tally(WHOLE_CHECKS, parts, search.context);
      const loose = tally(ADAPTER_CHECKS, parts, search.context);
      const count = countBits(known | whole.fails | loose.fails);
      const severity = beside.severity + whole.severity + loose.severity;
      if (!near || count < near.count || (count === near.count && severity < near.severity))
        near = { parts, count, severity };
      // Nothing can fail less than what cell, ends and frame fail already.
      if (count === countBits(bits)) return near;
    }
  }
  return near;
}

function byFails<T extends Tally>(list: readonly T[], own: number): { choice: T; count: number }[] {
  return list
    .map((choice) => ({ choice, count: countBits(choice.fails | own) }))
    .sort((a, b) => a.count - b.count || a.choice.severity - b.choice.severity);
}

/** Of the choices beside the specimen that fail the same rules, the one that is least short; chambers differ in what they take. */
function leastByMask(list: readonly BesideChoice[]): BesideChoice[] {
  const best = new Map<string, BesideChoice>();
  for (const each of list) {
    const key = `${each.fails} ${each.chamber.part?.id}`;
    const held = best.get(key);
    if (!held || each.severity < held.severity) best.set(key, each);
  }
  return [...best.values()].sort((a, b) => countBits(a.fails) - countBits(b.fails) || a.severity - b.severity);
}
