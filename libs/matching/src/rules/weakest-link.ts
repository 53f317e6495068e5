import type { Item } from '../item.js';
import { ratingAt } from '../rating-at.js';
import { allAdapters, atLeast, bothEnds, reaches, told, worst, worstEnd } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/**
 * Every adapter, grip, face and fixture carries the high end of the band with the lab's margin, at the test temperature and in the
 * direction of the test. A grip rated below the cell is fine, and governs.
 */
export const weakestLink: Rule = {
  code: 'weakest-link',
  source: 'the lowest-rated element governs: common practice, no source',
  checks: [
    {
      sees: ['ends'],
      judge: ({ ends }, context) => worstEnd(ends, (item) => carries(item, context)),
      passes: ({ ends }, context) => bothEnds(ends, context, bears),
      otherwise: 'fail',
    },
    {
      sees: ['faces'],
      judge: ({ faces }, context) => faces && carries(faces, context),
      passes: ({ faces }, context) => !faces || bears(faces, context),
      otherwise: 'fail',
    },
    {
      sees: ['adapters'],
      judge: ({ adapters }, context) =>
        worst([...adapters.upper, ...adapters.lower].map((item) => carries(item, context))),
      passes: ({ adapters }, context) => allAdapters(adapters, context, bears),
      otherwise: 'fail',
    },
  ],
};

/** What one item carries of the load. */
function carries(item: Item, { needs, settings }: Context): Finding {
  const required = needs.peakHigh.value * (1 + settings.forceMargin);
  const available = ratingAt(item, needs.direction, needs.temperature.value);
  if (available === 0)
    return { ...told('fail', 'not-made-for', [item.id], required, 0, needs.loadUnit), margin: -required };
  return atLeast('link-too-weak', [item.id], required, available, needs.loadUnit);
}

function bears(item: Item, { needs, settings }: Context): boolean {
  const available = ratingAt(item, needs.direction, needs.temperature.value);
  return available > 0 && reaches(available, needs.peakHigh.value * (1 + settings.forceMargin));
}
