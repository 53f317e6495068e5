import { cellCapacityFor } from './cell-capacity.js';
import { atLeast, atMostCaution, notBelow, reaches, worse } from './rule.js';
import type { Rule } from './rule.js';

/** The peak is best read between 10 and 80 % of the cell's capacity (lab settings); outside is a caution and ranks lower. */
export const cellBand: Rule = {
  code: 'cell-band',
  source: 'common practice, no source',
  checks: [
    {
      sees: ['cell'],
      judge({ cell }, { needs, settings }) {
        const capacity = cellCapacityFor(cell, needs);
        if (capacity === 0) return null;
        const peak = needs.peakHigh.value;
        const low = notBelow('below-band', [cell.id], peak, settings.cellBandLow * capacity, needs.loadUnit);
        const high = atLeast('above-band', [cell.id], peak, settings.cellBandHigh * capacity, needs.loadUnit);
        return atMostCaution(worse(low, high)!);
      },
      passes({ cell }, { needs, settings }) {
        const capacity = cellCapacityFor(cell, needs);
        const peak = needs.peakHigh.value;
        if (capacity === 0) return true;
        return reaches(peak, settings.cellBandLow * capacity) && reaches(settings.cellBandHigh * capacity, peak);
      },
      otherwise: 'caution',
    },
  ],
};
