import type { Item } from '../item.js';
import { ratingAt } from '../rating-at.js';
import { atLeast, told, worst, worstEnd } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/**
 * Every adapter, grip, face and fixture carries the high end of the band with the lab's margin, at the test temperature and in the
 * direction of the test. A grip rated below the cell is fine, and governs.
 */
export const weakestLink: Rule = {
  code: 'weakest-link',
  source: 'the lowest-rated element governs: common practice, no source',
  checks: [
    { sees: ['ends'], judge: ({ ends }, context) => worstEnd(ends, (item) => carries(item, context)) },
    { sees: ['faces'], judge: ({ faces }, context) => faces && carries(faces, context) },
    {
      sees: ['adapters'],
      judge: ({ adapters }, context) =>
        worst([...adapters.upper, ...adapters.lower].map((item) => carries(item, context))),
    },
  ],
};

/** Whether one item carries the load. */
export function carries(item: Item, { needs, settings }: Pick<Context, 'needs' | 'settings'>): Finding {
  const required = needs.peakHigh.value * (1 + settings.forceMargin);
  const available = ratingAt(item, needs.direction, needs.temperature.value);
  if (available === 0)
    return { ...told('fail', 'not-made-for', [item.id], required, 0, needs.loadUnit), margin: -required };
  return atLeast('link-too-weak', [item.id], required, available, needs.loadUnit);
}
