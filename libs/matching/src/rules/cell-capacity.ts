import { G_MS2 } from '#libs/units/src/index.js';
import type { Needs } from '../needs.js';
import { massOnCellKg } from '../parts.js';
import type { Parts } from '../parts.js';
import { atLeast, reaches, told } from './rule.js';
import type { Context, Rule } from './rule.js';

const HANGING: readonly (keyof Parts)[] = ['cell', 'cellAt', 'ends', 'faces', 'adapters'];

/**
 * The high end of the band with the lab's margin, and what hangs on the cell, stay within its capacity. With F that force and
 * W = g·Σm between cell and specimen, a crosshead cell carries F + W in tension and max(F − W, W) in compression; a cell at the base
 * the other way round. A static W above the lab's share (10 %) of the capacity is a caution.
 */
export const cellCapacity: Rule = {
  code: 'cell-capacity',
  source: 'physics of the hung weight; margin and 10 % are common practice, no source',
  checks: [
    {
      sees: ['cell'],
      judge({ cell }, context) {
        const { needs } = context;
        if (!cell.details.directions.includes(needs.direction)) {
          return told('fail', 'cell-blind', [cell.id], needs.direction, cell.details.directions.join(', '));
        }
        return atLeast(
          'cell-too-small',
          [cell.id],
          peakWithMargin(context),
          cellCapacityFor(cell, needs),
          needs.loadUnit,
        );
      },
      passes: ({ cell }, context) =>
        cell.details.directions.includes(context.needs.direction) &&
        reaches(cellCapacityFor(cell, context.needs), peakWithMargin(context)),
      otherwise: 'fail',
    },
    {
      sees: HANGING,
      judge(parts, context) {
        if (context.needs.direction === 'torque') return null;
        const { cell, cellAt } = parts;
        const onCellN = loadOnCellN(context, hungOnN(parts), cellAt);
        return atLeast('cell-too-small-hung', [cell.id], onCellN, cell.details.capacityN, 'N');
      },
      passes: (parts, context) =>
        context.needs.direction === 'torque' ||
        reaches(parts.cell.details.capacityN, loadOnCellN(context, hungOnN(parts), parts.cellAt)),
      otherwise: 'fail',
    },
    {
      sees: HANGING,
      judge(parts, context) {
        if (hangsLittle(parts, context)) return null;
        const { cell } = parts;
        const limitN = context.settings.hungWeightCaution * cell.details.capacityN;
        return { ...atLeast('hung-weight', [cell.id], hungOnN(parts), limitN, 'N'), outcome: 'caution' };
      },
      passes: hangsLittle,
      otherwise: 'caution',
    },
  ],
};

function hungOnN(parts: Parts): number {
  return G_MS2 * massOnCellKg(parts);
}

function hangsLittle(parts: Parts, { needs, settings }: Context): boolean {
  return needs.direction === 'torque' || hungOnN(parts) <= settings.hungWeightCaution * parts.cell.details.capacityN;
}

/** Capacity of a cell for these needs, N or N·m. */
export function cellCapacityFor({ details }: Parts['cell'], needs: Pick<Needs, 'direction'>): number {
  return needs.direction === 'torque' ? details.torqueCapacityNm : details.capacityN;
}

/**
 * Whether a mass on the cell is too much whatever else the train is: a quick no for the search, which leaves the last word to the rule.
 */
export function isTooHeavy(cell: Parts['cell'], cellAt: Parts['cellAt'], hungKg: number, context: Load): boolean {
  if (context.needs.direction === 'torque') return false;
  return loadOnCellN(context, G_MS2 * hungKg, cellAt) > cell.details.capacityN * (1 + SURE);
}

/** Far above any rounding, far below any difference that counts. */
const SURE = 1e-6;

type Load = Pick<Context, 'needs' | 'settings'>;

/** High end of the band with the lab's margin, N or N·m. */
function peakWithMargin({ needs, settings }: Load): number {
  return needs.peakHigh.value * (1 + settings.forceMargin);
}

/** Highest force on the cell with the lab's margin, N, as its amplifier sees it before zero is set. */
export function loadOnCellN(load: Load, hungN: number, cellAt: Parts['cellAt']): number {
  const forceN = peakWithMargin(load);
  const adds = (load.needs.direction === 'tension') === (cellAt === 'crosshead');
  return adds ? forceN + hungN : Math.max(forceN - hungN, hungN);
}
