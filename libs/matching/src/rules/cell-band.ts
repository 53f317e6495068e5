import { cellCapacityFor } from './cell-capacity.js';
import { CAUTION, PASS, worst } from './outcome.js';
import { rule } from './rule.js';

/** The peak is best read between 10 and 80 % of the cell's capacity (lab settings); outside is a caution and ranks lower. */
export const cellBand = rule({
  code: 'cell-band',
  source: 'common practice, no source',
  cautionsByOnePart: true,
  checks: [
    {
      sees: ['cell'],
      judge({ cell }, { needs, settings }, report) {
        const capacity = cellCapacityFor(cell, needs);
        if (capacity === 0) return PASS;
        const { loadUnit, peakHigh } = needs;
        const [low, high] = [settings.cellBandLow * capacity, settings.cellBandHigh * capacity];
        return worst(
          report.notBelow('below-band', peakHigh.value, low, loadUnit, cell, CAUTION),
          report.atLeast('above-band', peakHigh.value, high, loadUnit, cell, CAUTION),
        );
      },
    },
  ],
  sentences: {
    'below-band': ({ first, need, has, ok }) =>
      ok
        ? `The peak of ${need} sits well in the range of ${first}.`
        : `The peak of ${need} lies below ${has}, the part of ${first} where it reads best. A smaller cell would read it better.`,
    'above-band': ({ first, need, has, ok }) =>
      ok
        ? `The peak of ${need} sits well in the range of ${first}.`
        : `The peak of ${need} lies above ${has}, near the end of ${first}. A larger cell would leave more room.`,
  },
});
