import type { Item } from '../register/item.js';
import { eachItem } from './each-item.js';
import { FAIL, PASS } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { freeWindows } from './usable-windows.js';

/** Frame and items are in service, without an open fault, and not promised elsewhere for the whole time. */
export const frameState = rule({
  code: 'frame-state',
  source: 'register',
  checks: eachItem(
    ['frame', 'cell', 'faces', 'extensometer', 'chamber', 'guard', 'thermocouple', 'ends', 'adapters'],
    ready,
  ),
  sentences: {
    faulty: ({ first }) => `${first} has an open fault. Repair it, or use another.`,
    'out-of-use': ({ first }) => `${first} is out of use. Put it back in service, or use another.`,
    held: ({ first }) => `${first} is promised elsewhere for the whole time. Free it, or use another.`,
  },
});

function ready(item: Item, context: Context, report: Report): Outcome {
  if (item.state !== 'in-service') return report.say(FAIL, item.state, item, 'in-service', item.state);
  // What is usable at some time is not promised for all of it.
  if (item.heldWindows.length === 0 || context.windowsOf(item).length > 0) return PASS;
  return freeWindows(item, context.period).length === 0 ? report.say(FAIL, 'held', item) : PASS;
}
