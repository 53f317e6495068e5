import { cannotLoad } from './frame-capacity.js';
import { PASS } from './outcome.js';
import { rule } from './rule.js';
import { limit } from './sentence.js';

/** The crosshead has stroke enough for the test. */
export const travel = rule({
  code: 'travel',
  source: 'strain at break × length, or declared',
  checks: [
    {
      sees: ['frame'],
      judge({ frame }, { needs }, report) {
        return needs.direction === 'torque' || cannotLoad(frame.details, needs.direction)
          ? PASS
          : report.atLeast('travel-too-short', needs.travel.value, frame.details.travelMm, 'mm', frame);
      },
    },
  ],
  sentences: {
    'travel-too-short': limit(
      ({ need, has, first }) => `Needs ${need} of travel; ${first} has ${has}`,
      'Use a shorter specimen or a frame with more travel.',
    ),
  },
});
