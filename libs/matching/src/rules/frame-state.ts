import type { Item } from '../item.js';
import { freeWindows } from '../usable-windows.js';
import { told, worst, worstEnd } from './rule.js';
import type { Check, Context, Finding, Rule } from './rule.js';

/** Frame and items are in service, without an open fault, and not promised elsewhere for the whole time. */
export const frameState: Rule = {
  code: 'frame-state',
  source: 'register',
  checks: [
    each('frame'),
    each('cell'),
    each('faces'),
    each('extensometer'),
    each('chamber'),
    each('guard'),
    each('thermocouple'),
    { sees: ['ends'], judge: ({ ends }, context) => worstEnd(ends, (item) => ready(item, context)) },
    {
      sees: ['adapters'],
      judge: ({ adapters }, context) =>
        worst([...adapters.upper, ...adapters.lower].map((item) => ready(item, context))),
    },
  ],
};

function each(part: 'frame' | 'cell' | 'faces' | 'extensometer' | 'chamber' | 'guard' | 'thermocouple'): Check {
  return { sees: [part], judge: (parts, context) => ready(parts[part], context) };
}

function ready(item: Item | null, context: Context): Finding | null {
  if (!item) return null;
  if (item.state !== 'in-service') return told('fail', item.state, [item.id], 'in-service', item.state);
  if (item.heldWindows.length === 0) return null;
  // What is usable at some time is not promised for all of it.
  if (context.windowsOf(item).length > 0) return null;
  if (freeWindows(item, context.period).length === 0) return told('fail', 'held', [item.id], null, null);
  return null;
}
