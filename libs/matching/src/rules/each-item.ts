import type { Adapter, Item } from '../register/item.js';
import { PASS, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import { isPair } from './parts.js';
import type { Adapters, EndItem, Ends, Parts } from './parts.js';
import type { Report } from './report.js';
import type { Check, Context } from './rule.js';

type JudgeItem<T extends Item> = (item: T, context: Context, report: Report) => Outcome;

/** Parts of a train that are one item each, or nothing. */
type SinglePart = Exclude<keyof Parts, 'cellAt' | 'ends' | 'adapters'>;

/** The same check for each of some parts of a train, whatever item takes it; an empty place passes. */
export function eachItem(parts: readonly (SinglePart | 'ends' | 'adapters')[], judge: JudgeItem<Item>): Check[] {
  return parts.map((part): Check => {
    switch (part) {
      case 'ends':
        return { sees: ['ends'], judge: ({ ends }, context, report) => eachEnd(ends, judge, context, report) };
      case 'adapters':
        return {
          sees: ['adapters'],
          judge: ({ adapters }, context, report) => eachAdapter(adapters, judge, context, report),
        };
      default:
        return {
          sees: [part],
          judge(all, context, report) {
            const item = all[part];
            return item ? judge(item, context, report) : PASS;
          },
        };
    }
  });
}

/** Both ends of a train; a pair is looked at once. */
export function eachEnd({ upper, lower }: Ends, judge: JudgeItem<EndItem>, context: Context, report: Report): Outcome {
  const above = judge(upper, context, report);
  return upper.id === lower.id ? above : worst(above, judge(lower, context, report));
}

function eachAdapter({ upper, lower }: Adapters, judge: JudgeItem<Adapter>, context: Context, report: Report): Outcome {
  let outcome: Outcome = PASS;
  for (const adapter of upper) outcome = worst(outcome, judge(adapter, context, report));
  for (const adapter of lower) outcome = worst(outcome, judge(adapter, context, report));
  return outcome;
}

/** Whether something holds for both ends. */
export function bothEnds(ends: Ends, context: Context, holds: (end: EndItem, context: Context) => boolean): boolean {
  return holds(ends.upper, context) && (isPair(ends) || holds(ends.lower, context));
}

/** Whether something holds for every adapter of both sides. */
export function allAdapters(
  { upper, lower }: Adapters,
  context: Context,
  holds: (adapter: Adapter, context: Context) => boolean,
): boolean {
  for (const adapter of upper) if (!holds(adapter, context)) return false;
  for (const adapter of lower) if (!holds(adapter, context)) return false;
  return true;
}
