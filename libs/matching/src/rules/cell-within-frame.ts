import { cellCapacityFor } from './cell-capacity.js';
import { CAPACITY_FIELDS, capacityOf } from './frame-capacity.js';
import { PASS } from './outcome.js';
import { rule } from './rule.js';
import { limit } from './sentence.js';

/**
 * A cell may match but never exceed the capacity of the frame that it hangs in: 5 kN on 5 kN passes, 10 kN on 5 kN never does,
 * 50 N on 5 kN is fine for small forces. Never waived.
 */
export const cellWithinFrame = rule({
  code: 'cell-within-frame',
  source: 'common practice, no source',
  checks: [
    {
      sees: ['frame', 'cell'],
      frameFields: CAPACITY_FIELDS,
      judge({ frame, cell }, { needs }, report) {
        const capacity = capacityOf(frame.details, needs.direction);
        // A frame that cannot load this way fails by its own rule; that says nothing about the cell.
        if (capacity === 0) return PASS;
        const rated = cellCapacityFor(cell, needs);
        return report.atLeast('cell-exceeds-frame', rated, capacity, needs.loadUnit, [cell, frame]);
      },
    },
  ],
  sentences: {
    'cell-exceeds-frame': limit(
      ({ first, second, need, has }) =>
        `Cell ${first} is rated ${need}, frame ${second} ${has}; a cell may match its frame but not exceed it`,
      'Choose a smaller cell or a larger frame.',
    ),
  },
});
