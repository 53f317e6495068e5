import type { Item } from '../item.js';
import type { Parts } from '../parts.js';
import { freeWindows } from '../usable-windows.js';
import { allAdapters, bothEnds, told, worst, worstEnd } from './rule.js';
import type { Check, Context, Finding, Rule } from './rule.js';

/** Frame and items are in service, without an open fault, and not promised elsewhere for the whole time. */
export const frameState: Rule = {
  code: 'frame-state',
  source: 'register',
  checks: [
    each('frame', ({ frame }) => frame),
    each('cell', ({ cell }) => cell),
    each('faces', ({ faces }) => faces),
    each('extensometer', ({ extensometer }) => extensometer),
    each('chamber', ({ chamber }) => chamber),
    each('guard', ({ guard }) => guard),
    each('thermocouple', ({ thermocouple }) => thermocouple),
    {
      sees: ['ends'],
      judge: ({ ends }, context) => worstEnd(ends, (item) => ready(item, context)),
      passes: ({ ends }, context) => bothEnds(ends, context, isReady),
    },
    {
      sees: ['adapters'],
      judge: ({ adapters }, context) =>
        worst([...adapters.upper, ...adapters.lower].map((item) => ready(item, context))),
      passes: ({ adapters }, context) => allAdapters(adapters, context, isReady),
    },
  ],
};

function each(part: keyof Parts, itemOf: (parts: Parts) => Item | null): Check {
  return {
    sees: [part],
    judge: (parts, context) => ready(itemOf(parts), context),
    passes: (parts, context) => isReady(itemOf(parts), context),
  };
}

/** What is usable at some time is not promised for all of it. */
function isReady(item: Item | null, context: Context): boolean {
  if (!item) return true;
  return item.state === 'in-service' && (item.heldWindows.length === 0 || context.windowsOf(item).length > 0);
}

function ready(item: Item | null, context: Context): Finding | null {
  if (!item || isReady(item, context)) return null;
  if (item.state !== 'in-service') return told('fail', item.state, [item.id], 'in-service', item.state);
  if (freeWindows(item, context.period).length === 0) return told('fail', 'held', [item.id], null, null);
  return null;
}
