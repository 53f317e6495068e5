import { cannotLoad } from './frame-capacity.js';
import { atLeast, reaches } from './rule.js';
import type { Rule } from './rule.js';

/** The crosshead has stroke enough for the test. */
export const travel: Rule = {
  code: 'travel',
  source: 'strain at break × length, or declared',
  checks: [
    {
      sees: ['frame'],
      judge({ frame }, { needs }) {
        return needs.direction === 'torque' || cannotLoad(frame.details, needs.direction)
          ? null
          : atLeast('travel-too-short', [frame.id], needs.travel.value, frame.details.travelMm, 'mm');
      },
      passes: ({ frame }, { needs }) =>
        needs.direction === 'torque' || reaches(frame.details.travelMm, needs.travel.value),
    },
  ],
};
