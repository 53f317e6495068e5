import { cellCapacityFor } from './cell-capacity.js';
import { capacityOf } from './frame-capacity.js';
import { atLeast, reaches } from './rule.js';
import type { Rule } from './rule.js';

/**
 * A cell may match but never exceed the capacity of the frame that it hangs in: 5 kN on 5 kN passes, 10 kN on 5 kN never does,
 * 50 N on 5 kN is fine for small forces. Never waived.
 */
export const cellWithinFrame: Rule = {
  code: 'cell-within-frame',
  source: 'common practice, no source',
  checks: [
    {
      sees: ['frame', 'cell'],
      judge({ frame, cell }, { needs }) {
        const capacity = capacityOf(frame.details, needs.direction);
        // A frame that cannot load this way fails by its own rule; that says nothing about the cell.
        if (capacity === 0) return null;
        return atLeast(
          'cell-exceeds-frame',
          [cell.id, frame.id],
          cellCapacityFor(cell, needs),
          capacity,
          needs.loadUnit,
        );
      },
      passes({ frame, cell }, { needs }) {
        const capacity = capacityOf(frame.details, needs.direction);
        return capacity === 0 || reaches(capacity, cellCapacityFor(cell, needs));
      },
      otherwise: 'fail',
    },
  ],
};
