import { formatNumber } from '#libs/units/src/index.js';
import type { CheckRule } from './check-facts.js';

/** Percent bending of the train, where the method limits it. */
export const alignment: CheckRule = ({ needs: { alignmentMaxBendingPct: max } }) =>
  max === null
    ? null
    : {
        key: 'alignment',
        label: 'Alignment',
        detail: `Percent bending of the strain-gauged specimen: ${formatNumber(max)} % at most.`,
        required: true,
        kind: 'value',
        unit: '%',
        max,
      };
