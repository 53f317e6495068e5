import { totalMs } from '#libs/calendar/src/index.js';
import type { Item, TimeWindow } from '../item.js';
import { endItems } from '../parts.js';
import type { Parts } from '../parts.js';
import { allAdapters, bothEnds, told, worst, worstEnd } from './rule.js';
import type { Check, Context, Finding, Rule } from './rule.js';

/**
 * Each item that needs calibration has it while the test runs. Time decides, so a lapse within the period is a caution that shortens
 * the usable windows; never in force is a failure. All items of the train must be usable at one and the same time.
 */
export const calibrationInForce: Rule = {
  code: 'calibration-in-force',
  source: 'ISO/IEC 17025:2017 6.4.4, 6.4.6',
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
      judge: ({ ends }, context) => worstEnd(ends, (item) => inForce(item, context)),
      passes: ({ ends }, context) => bothEnds(ends, context, isInForce),
    },
    {
      sees: ['adapters'],
      judge: ({ adapters }, context) =>
        worst([...adapters.upper, ...adapters.lower].map((item) => inForce(item, context))),
      passes: ({ adapters }, context) => allAdapters(adapters, context, isInForce),
    },
    {
      sees: ['frame', 'cell', 'ends', 'faces', 'adapters', 'extensometer', 'chamber', 'guard', 'thermocouple'],
      judge: (parts, context) => neverTogether(itemsOf(parts), context),
      passes: (parts, context) => together(parts, context).length > 0,
    },
  ],
};

function each(part: keyof Parts, itemOf: (parts: Parts) => Item | null): Check {
  return {
    sees: [part],
    judge: (parts, context) => inForce(itemOf(parts), context),
    passes: (parts, context) => isInForce(itemOf(parts), context),
  };
}

function inForce(item: Item | null, context: Context): Finding | null {
  if (!item?.needsCalibration) return null;
  const windows = context.windowsOf(item);
  if (windows.length > 0)
    return told(
      coversAll(windows, context) ? 'pass' : 'caution',
      'lapses',
      [item.id],
      null,
      windows.at(-1)!.endMs,
      'ms',
    );
  if (item.calibrations.length === 0) return told('fail', 'never-calibrated', [item.id]);
  const latest = Math.max(...item.calibrations.map(({ dueMs }) => dueMs));
  // A class or range that does not fit, a fault and a promise have rules of their own; here only time counts.
  return latest > context.period.startMs ? null : told('fail', 'lapsed', [item.id], null, latest, 'ms');
}

function isInForce(item: Item | null, context: Context): boolean {
  if (!item?.needsCalibration) return true;
  const windows = context.windowsOf(item);
  if (windows.length > 0) return coversAll(windows, context);
  return item.calibrations.some(({ dueMs }) => dueMs > context.period.startMs);
}

function coversAll(windows: readonly TimeWindow[], { period }: Context): boolean {
  const ms = windows.length === 1 ? windows[0]!.endMs - windows[0]!.startMs : totalMs(windows);
  return ms >= period.endMs - period.startMs;
}

/** When all of the train is usable at once and somebody may run it; by pools where the context knows them. */
export function together(parts: Parts, context: Context): readonly TimeWindow[] {
  const { frame, cell, adapters, ends, faces, extensometer, chamber, guard, thermocouple } = parts;
  const always =
    isAlways(frame, context) &&
    isAlways(cell, context) &&
    isAlways(ends.upper, context) &&
    isAlways(ends.lower, context) &&
    isAlways(faces, context) &&
    isAlways(extensometer, context) &&
    isAlways(chamber, context) &&
    isAlways(guard, context) &&
    isAlways(thermocouple, context) &&
    allAdapters(adapters, context, isAlways);
  return always ? context.commonWindows(NONE) : togetherAll(itemsOf(parts), context);
}

/**
 * Whether some items of a train are never usable at once, so that no train with them passes: a quick no for the search. One that is
 * never usable at all has a rule that says why.
 */
export function areNeverTogether(items: readonly Item[], context: Context): boolean {
  return togetherAll(items, context).length === 0 && items.every((item) => context.windowsOf(item).length > 0);
}

/** When all of some items are usable at once and somebody may run it. */
function togetherAll(items: readonly Item[], context: Context): readonly TimeWindow[] {
  for (const item of items)
    if (!isAlways(item, context)) return context.commonWindows(items.filter((each) => !isAlways(each, context)));
  return context.commonWindows(NONE);
}

const NONE: readonly Item[] = [];

/** Whether an item limits no train: usable for the whole period, or none at all. */
export function isAlways(item: Item | null, context: Context): boolean {
  return item === null || isWhole(context.windowsOf(item), context);
}

function isWhole(windows: readonly TimeWindow[], { period }: Context): boolean {
  return windows.length === 1 && windows[0]!.startMs <= period.startMs && windows[0]!.endMs >= period.endMs;
}

function neverTogether(items: readonly Item[], context: Context): Finding | null {
  if (!areNeverTogether(items, context)) return null;
  return told(
    'fail',
    'never-together',
    items.filter((item) => !isAlways(item, context)).map(({ id }) => id),
  );
}

/** Every item of a train, the frame first. */
export function itemsOf({
  frame,
  cell,
  adapters,
  ends,
  faces,
  extensometer,
  chamber,
  guard,
  thermocouple,
}: Parts): Item[] {
  const beside = [faces, extensometer, chamber, guard, thermocouple].filter((item) => item !== null);
  return [frame, cell, ...adapters.upper, ...endItems(ends), ...adapters.lower, ...beside];
}
