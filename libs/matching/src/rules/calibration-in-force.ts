import { totalMs } from '#libs/calendar/src/index.js';
import type { Item, TimeWindow } from '../item.js';
import { endItems } from '../parts.js';
import type { Parts } from '../parts.js';
import { told, worst, worstEnd } from './rule.js';
import type { Check, Context, Finding, Rule } from './rule.js';

/**
 * Each item that needs calibration has it while the test runs. Time decides, so a lapse within the period is a caution that shortens
 * the usable windows; never in force is a failure. All items of the train must be usable at one and the same time.
 */
export const calibrationInForce: Rule = {
  code: 'calibration-in-force',
  source: 'ISO/IEC 17025:2017 6.4.4, 6.4.6',
  checks: [
    each('frame'),
    each('cell'),
    each('faces'),
    each('extensometer'),
    each('chamber'),
    each('guard'),
    each('thermocouple'),
    { sees: ['ends'], judge: ({ ends }, context) => worstEnd(ends, (item) => inForce(item, context)) },
    {
      sees: ['adapters'],
      judge: ({ adapters }, context) =>
        worst([...adapters.upper, ...adapters.lower].map((item) => inForce(item, context))),
    },
    {
      sees: ['frame', 'cell', 'ends', 'faces', 'adapters', 'extensometer', 'chamber', 'guard', 'thermocouple'],
      judge: (parts, context) => (together(parts, context).length === 0 ? neverTogether(parts, context) : null),
    },
  ],
};

function each(part: 'frame' | 'cell' | 'faces' | 'extensometer' | 'chamber' | 'guard' | 'thermocouple'): Check {
  return { sees: [part], judge: (parts, context) => inForce(parts[part], context) };
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

function coversAll(windows: readonly TimeWindow[], { period }: Context): boolean {
  return totalMs(windows) >= period.endMs - period.startMs;
}

/** When all of the train is usable at once and somebody may run it; by pools where the context knows them. */
export function together(parts: Parts, context: Context): readonly TimeWindow[] {
  const limited = itemsOf(parts).filter((item) => !isWhole(context.windowsOf(item), context));
  return context.commonWindows(limited);
}

function isWhole(windows: readonly TimeWindow[], { period }: Context): boolean {
  return windows.length === 1 && windows[0]!.startMs <= period.startMs && windows[0]!.endMs >= period.endMs;
}

/** Only where each item alone is usable at some time: one that never is has a rule that says why. */
function neverTogether(parts: Parts, context: Context): Finding | null {
  const items = itemsOf(parts);
  if (items.some((item) => context.windowsOf(item).length === 0)) return null;
  return told(
    'fail',
    'never-together',
    items.filter((item) => !isWhole(context.windowsOf(item), context)).map(({ id }) => id),
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
