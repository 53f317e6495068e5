import { hottestRating, ratingAt } from '../register/rating-at.js';
import { eachItem } from './each-item.js';
import { peakWithMargin } from './frame-capacity.js';
import { FAIL } from './outcome.js';
import { rule } from './rule.js';
import { limit } from './sentence.js';

/**
 * Every adapter, grip, face and fixture carries the high end of the band with the lab's margin, at the test temperature and in the
 * direction of the test. A grip rated below the cell is fine, and governs.
 */
export const weakestLink = rule({
  code: 'weakest-link',
  source: 'the lowest-rated element governs: common practice, no source',
  checks: eachItem(['ends', 'faces', 'adapters'], (item, context, report) => {
    const { direction, temperature, loadUnit } = context.needs;
    const required = peakWithMargin(context);
    const available = ratingAt(item, direction, temperature.value);
    if (available > 0) return report.atLeast('link-too-weak', required, available, loadUnit, item);
    const hottest = hottestRating(item, direction);
    return hottest === null
      ? report.short(FAIL, 'not-made-for', required, 0, loadUnit, item)
      : report.say(FAIL, 'not-rated-so-hot', item, temperature.value, hottest, '°C');
  }),
  sentences: {
    'not-made-for': ({ first }) => `${first} is not made for this direction. Choose another.`,
    'not-rated-so-hot': ({ first, need, has }) =>
      `Nobody has said what ${first} carries at ${need}; its last rating is for ${has}. Ask its maker and enter it, or choose another.`,
    'link-too-weak': limit(
      ({ need, has, first }) => `Needs ${need} with margin at test temperature; ${first} carries ${has}`,
      'Choose a stronger link or lower the peak.',
    ),
  },
});
