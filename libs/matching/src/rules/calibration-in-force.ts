import { totalMs } from '#libs/calendar/src/index.js';
import type { Item, TimeWindow } from '../register/item.js';
import { allAdapters, eachItem } from './each-item.js';
import { CAUTION, FAIL, PASS } from './outcome.js';
import type { Outcome } from './outcome.js';
import { endItems } from './parts.js';
import type { Parts } from './parts.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';

const ALL_ITEMS = [
  'frame',
  'cell',
  'faces',
  'extensometer',
  'chamber',
  'guard',
  'thermocouple',
  'ends',
  'adapters',
] as const;

/**
 * Each item that needs calibration has it while the test runs. Time decides, so a lapse within the period is a caution that shortens
 * the usable windows; never in force is a failure. All items of the train must be usable at one and the same time.
 */
export const calibrationInForce = rule({
  code: 'calibration-in-force',
  source: 'ISO/IEC 17025:2017 6.4.4, 6.4.6',
  checks: [
    ...eachItem(ALL_ITEMS, inForce),
    {
      sees: ALL_ITEMS,
      judge: (parts, context, report) =>
        together(parts, context).length > 0 ? PASS : neverTogether(itemsOf(parts), context, report),
    },
  ],
  sentences: {
    lapses: ({ all, ok }) =>
      ok
        ? `The calibration of ${all} is in force throughout.`
        : `${all} is usable for part of the time only: its calibration lapses, or it is promised elsewhere.`,
    lapsed: ({ first }) => `The calibration of ${first} has lapsed. Have it calibrated before it is used.`,
    'never-calibrated': ({ first }) => `${first} needs a calibration and has none. Have it calibrated.`,
    'never-together': ({ all }) =>
      `${all} are never usable at the same time while someone who may run the method is on shift. Change the period or the units.`,
  },
});

function inForce(item: Item, context: Context, report: Report): Outcome {
  if (!item.needsCalibration) return PASS;
  const windows = context.windowsOf(item);
  if (windows.length > 0) {
    const outcome = coversAll(windows, context) ? PASS : CAUTION;
    return report.say(outcome, 'lapses', item, null, windows.at(-1)!.endMs, 'ms');
  }
  if (item.calibrations.length === 0) return report.say(FAIL, 'never-calibrated', item);
  const latestMs = item.calibrations.reduce((latest, { dueMs }) => Math.max(latest, dueMs), -Infinity);
  // A class or range that does not fit, a fault and a promise have rules of their own; here only time counts.
  return latestMs > context.period.startMs ? PASS : report.say(FAIL, 'lapsed', item, null, latestMs, 'ms');
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

function neverTogether(items: readonly Item[], context: Context, report: Report): Outcome {
  if (!areNeverTogether(items, context)) return PASS;
  return report.say(
    FAIL,
    'never-together',
    items.filter((item) => !isAlways(item, context)),
  );
}

/** Every item of a train, the frame first. */
function itemsOf({ frame, cell, adapters, ends, faces, extensometer, chamber, guard, thermocouple }: Parts): Item[] {
  const beside = [faces, extensometer, chamber, guard, thermocouple].filter((item) => item !== null);
  return [frame, cell, ...adapters.upper, ...endItems(ends), ...adapters.lower, ...beside];
}
