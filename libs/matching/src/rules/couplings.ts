import { couplingWords, meets } from '../couplings.js';
import type { Coupling, Item } from '../item.js';
import type { Adapter } from '../item.js';
import type { Parts } from '../parts.js';
import { told } from './rule.js';
import type { Finding, Rule } from './rule.js';

/** Adapters that are allowed on each side. */
export const MOST_ADAPTERS = 2;

/** The ends meet from crosshead to base: type, size and gender; at most two adapters a side. */
export const couplings: Rule = {
  code: 'couplings',
  source: 'common practice, no source',
  checks: [
    { sees: ['frame', 'cell', 'cellAt'], judge: cellMeetsFrame, passes: hasSeat, otherwise: 'fail' },
    {
      sees: ['frame', 'cell', 'cellAt', 'ends', 'adapters'],
      judge(parts) {
        const { upper, lower } = openEnds(parts);
        return (
          side(upper, parts.adapters.upper, parts.ends.upper) ??
          side(lower, parts.adapters.lower, parts.ends.lower) ??
          told('pass', 'meets', [])
        );
      },
      passes(parts) {
        const { upper, lower } = openEnds(parts);
        return (
          side(upper, parts.adapters.upper, parts.ends.upper) === null &&
          side(lower, parts.adapters.lower, parts.ends.lower) === null
        );
      },
      otherwise: 'fail',
    },
  ],
};

export interface OpenEnd {
  coupling: Coupling;
  item: Item;
}

/** What the train offers to the two ends of the specimen before any adapter: the cell's live end on one side, the frame on the other. */
export function openEnds({ frame, cell, cellAt }: Pick<Parts, 'frame' | 'cell' | 'cellAt'>): {
  upper: OpenEnd;
  lower: OpenEnd;
} {
  const live = { coupling: cell.details.specimenCoupling, item: cell };
  return cellAt === 'crosshead'
    ? { upper: live, lower: { coupling: frame.details.baseCoupling, item: frame } }
    : { upper: { coupling: frame.details.crossheadCoupling, item: frame }, lower: live };
}

function hasSeat({ frame, cell, cellAt }: Parts): boolean {
  const { crossheadCoupling, baseCoupling, cellPositions } = frame.details;
  const seat = cellAt === 'crosshead' ? crossheadCoupling : baseCoupling;
  return cellPositions.includes(cellAt) && meets(seat, cell.details.frameCoupling);
}

function cellMeetsFrame(parts: Parts): Finding {
  const { frame, cell, cellAt } = parts;
  const { crossheadCoupling, baseCoupling, cellPositions } = frame.details;
  const seat = cellAt === 'crosshead' ? crossheadCoupling : baseCoupling;
  if (!cellPositions.includes(cellAt))
    return told('fail', 'no-seat', [cell.id, frame.id], cellAt, cellPositions.join(', '));
  if (hasSeat(parts)) return told('pass', 'meets', [cell.id, frame.id]);
  return told(
    'fail',
    'do-not-meet',
    [frame.id, cell.id],
    couplingWords(seat),
    couplingWords(cell.details.frameCoupling),
  );
}

function side(from: OpenEnd, adapters: readonly Adapter[], end: Parts['ends']['upper']): Finding | null {
  if (adapters.length > MOST_ADAPTERS)
    return told(
      'fail',
      'too-many-adapters',
      adapters.map(({ id }) => id),
      MOST_ADAPTERS,
      adapters.length,
    );
  let open = from;
  for (const adapter of adapters) {
    const [a, b] = adapter.details.ends;
    if (meets(open.coupling, a)) open = { coupling: b, item: adapter };
    else if (meets(open.coupling, b)) open = { coupling: a, item: adapter };
    else
      return told(
        'fail',
        'do-not-meet',
        [open.item.id, adapter.id],
        couplingWords(open.coupling),
        `${couplingWords(a)} / ${couplingWords(b)}`,
      );
  }
  if (meets(open.coupling, end.details.coupling)) return null;
  return told(
    'fail',
    'do-not-meet',
    [open.item.id, end.id],
    couplingWords(open.coupling),
    couplingWords(end.details.coupling),
  );
}
