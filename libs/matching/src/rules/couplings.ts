import { couplingWords, meets } from '../register/couplings.js';
import type { Adapter, Coupling, Item } from '../register/item.js';
import { FAIL, PASS } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Parts } from './parts.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';

/** Adapters that are allowed on each side. */
export const MOST_ADAPTERS = 2;

/** The ends meet from crosshead to base: type, size and gender; at most two adapters a side. */
export const couplings = rule({
  code: 'couplings',
  source: 'common practice, no source',
  checks: [
    {
      sees: ['frame', 'cell', 'cellAt'],
      frameFields: ['crossheadCoupling', 'baseCoupling', 'cellPositions'],
      judge: cellMeetsFrame,
    },
    {
      sees: ['frame', 'cell', 'cellAt', 'ends', 'adapters'],
      judge(parts, _context, report) {
        const { upper, lower } = openEnds(parts);
        const above = side(upper, parts.adapters.upper, parts.ends.upper, report);
        if (above === FAIL) return above;
        const below = side(lower, parts.adapters.lower, parts.ends.lower, report);
        return below === FAIL ? below : report.say(PASS, 'meets', NOTHING);
      },
    },
  ],
  sentences: {
    meets: () => 'All ends meet.',
    'no-seat': ({ first, second, need, has }) =>
      `${second} takes a cell at ${has}, not at the ${need}; ${first} has no place there.`,
    'do-not-meet': ({ first, second, need, has }) =>
      `${first} offers ${need}; ${second} has ${has}. Add an adapter that joins them.`,
    'too-many-adapters': ({ has, need }) => `${has} adapters on one side; ${need} is the most.`,
  },
});

const NOTHING: readonly Item[] = [];

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

function cellMeetsFrame({ frame, cell, cellAt }: Parts, _context: Context, report: Report): Outcome {
  const { crossheadCoupling, baseCoupling, cellPositions } = frame.details;
  const seat = cellAt === 'crosshead' ? crossheadCoupling : baseCoupling;
  if (!cellPositions.includes(cellAt))
    return report.say(FAIL, 'no-seat', [cell, frame], cellAt, () => cellPositions.join(', '));
  const own = cell.details.frameCoupling;
  if (meets(seat, own)) return report.say(PASS, 'meets', [cell, frame]);
  return doNotMeet(frame, seat, cell, own, report);
}

function side(from: OpenEnd, adapters: readonly Adapter[], end: Parts['ends']['upper'], report: Report): Outcome {
  if (adapters.length > MOST_ADAPTERS)
    return report.say(FAIL, 'too-many-adapters', adapters, MOST_ADAPTERS, adapters.length);
  let open = from;
  for (const adapter of adapters) {
    const [a, b] = adapter.details.ends;
    if (meets(open.coupling, a)) open = { coupling: b, item: adapter };
    else if (meets(open.coupling, b)) open = { coupling: a, item: adapter };
    else
      return report.say(
        FAIL,
        'do-not-meet',
        [open.item, adapter],
        couplingWords(open.coupling),
        () => `${couplingWords(a)} / ${couplingWords(b)}`,
      );
  }
  const { coupling } = end.details;
  return meets(open.coupling, coupling) ? PASS : doNotMeet(open.item, open.coupling, end, coupling, report);
}

function doNotMeet(from: Item, offers: Coupling, to: Item, has: Coupling, report: Report): Outcome {
  return report.say(FAIL, 'do-not-meet', [from, to], couplingWords(offers), couplingWords(has));
}
