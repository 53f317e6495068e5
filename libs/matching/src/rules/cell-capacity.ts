import { G_MS2 } from '#libs/units/src/index.js';
import type { Needs } from '../ask/needs.js';
import { peakWithMargin } from './frame-capacity.js';
import { CAUTION, FAIL, PASS } from './outcome.js';
import { massOnCellKg } from './parts.js';
import type { Parts } from './parts.js';
import { rule } from './rule.js';
import type { Context, PartName } from './rule.js';
import { limit } from './sentence.js';

/** What decides the weight on the cell. */
const HANGING: readonly PartName[] = ['cell', 'cellAt', 'ends', 'faces', 'adapters'];

/**
 * The high end of the band with the lab's margin, and what hangs on the cell, stay within its capacity. With F that force and
 * W = g·Σm between cell and specimen, a crosshead cell carries F + W in tension and max(F − W, W) in compression; a cell at the base
 * the other way round. A static W above the lab's share (10 %) of the capacity is a caution.
 */
export const cellCapacity = rule({
  code: 'cell-capacity',
  source: 'physics of the hung weight; margin and 10 % are common practice, no source',
  checks: [
    {
      sees: ['cell'],
      judge({ cell }, context, report) {
        const { needs } = context;
        const { directions } = cell.details;
        if (!directions.includes(needs.direction))
          return report.say(FAIL, 'cell-blind', cell, needs.direction, () => directions.join(', '));
        const capacity = cellCapacityFor(cell, needs);
        return report.atLeast('cell-too-small', peakWithMargin(context), capacity, needs.loadUnit, cell);
      },
    },
    {
      sees: HANGING,
      heavierFailsToo: true,
      judge(parts, context, report) {
        if (context.needs.direction === 'torque') return PASS;
        const { cell, cellAt } = parts;
        const onCellN = loadOnCellN(context, hungOnN(parts), cellAt);
        return report.atLeast('cell-too-small-hung', onCellN, cell.details.capacityN, 'N', cell);
      },
    },
    {
      sees: HANGING,
      judge(parts, { needs, settings }, report) {
        if (needs.direction === 'torque') return PASS;
        const { cell } = parts;
        const hungN = hungOnN(parts);
        const limitN = settings.hungWeightCaution * cell.details.capacityN;
        return hungN <= limitN ? PASS : report.short(CAUTION, 'hung-weight', hungN, limitN, 'N', cell);
      },
    },
  ],
  sentences: {
    'no-cell': ({ need }) => `The lab has no load cell for ${need}.`,
    'cell-blind': ({ first, need, has }) => `${first} senses ${has}, not ${need}. Choose another cell.`,
    'cell-too-small': limit(
      ({ first, need, has }) => `Needs ${need} with margin; ${first} is rated ${has}`,
      'Choose a larger cell.',
    ),
    'cell-too-small-hung': limit(
      ({ first, need, has }) => `Needs ${need} with margin and what hangs on it; ${first} is rated ${has}`,
      'Choose a larger cell or lighter grips.',
    ),
    'hung-weight': ({ first, need, has }) =>
      `${need} hang on ${first} before the test; more than ${has} is a tenth of its range used up. Choose lighter grips or a larger cell.`,
  },
});

function hungOnN(parts: Parts): number {
  return G_MS2 * massOnCellKg(parts);
}

/** Capacity of a cell for these needs, N or N·m. */
export function cellCapacityFor({ details }: Parts['cell'], needs: Pick<Needs, 'direction'>): number {
  return needs.direction === 'torque' ? details.torqueCapacityNm : details.capacityN;
}

type Load = Pick<Context, 'needs' | 'settings'>;

/**
 * Whether a mass on the cell is too much whatever else the train is: a quick no for the search, which leaves the last word to the rule.
 */
export function isTooHeavy(cell: Parts['cell'], cellAt: Parts['cellAt'], hungKg: number, load: Load): boolean {
  if (load.needs.direction === 'torque') return false;
  return loadOnCellN(load, G_MS2 * hungKg, cellAt) > cell.details.capacityN * (1 + SURE);
}

/** Far above any rounding, far below any difference that counts. */
const SURE = 1e-6;

/** Highest force on the cell with the lab's margin, N, as its amplifier sees it before zero is set. */
export function loadOnCellN(load: Load, hungN: number, cellAt: Parts['cellAt']): number {
  const forceN = peakWithMargin(load);
  const adds = (load.needs.direction === 'tension') === (cellAt === 'crosshead');
  return adds ? forceN + hungN : Math.max(forceN - hungN, hungN);
}
