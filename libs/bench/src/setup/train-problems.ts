import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import type { TrainProblem } from './train-problem.js';

/** Half-open, UTC ms. */
export interface Period {
  startMs: number;
  endMs: number;
}

/** An item of a train, as far as time speaks against it. */
export interface TimedItem {
  id: string;
  tag: string;
  needsCalibration: boolean;
  calibrations: readonly { validFromMs: number; dueMs: number }[];
  /** When it is promised elsewhere. */
  heldWindows: readonly Period[];
}

/** What a rule of matching says of the train. */
interface RuleVerdict {
  rule: string;
  outcome: string;
  items: readonly string[];
  sentence: string;
}

/**
 * Everything that keeps a train from being used in the whole of a period: a rule that fails, a calibration that lapses within it,
 * an item that is promised elsewhere. Matching takes a lapse for a caution, because it may choose the time; the bench may not.
 *
 * @param items those of the train, its frame included
 */
export function trainProblems(
  verdicts: readonly RuleVerdict[],
  items: readonly TimedItem[],
  period: Period,
): TrainProblem[] {
  const failing = verdicts
    .filter(({ outcome }) => outcome === 'fail')
    .map(({ rule, items: about, sentence }) => ({ rule, items: about, sentence }));
  const problems = [...failing, ...items.flatMap((item) => [...lapse(item, period), ...promised(item, period)])];
  return problems.filter(({ sentence }, at) => problems.findIndex((other) => other.sentence === sentence) === at);
}

/** A train that is not whole cannot be judged. */
export const INCOMPLETE_TRAIN: TrainProblem = {
  rule: 'couplings',
  items: [],
  sentence:
    'The train is not whole: a frame, a load cell and something that holds the specimen are needed. Give the job back.',
};

function lapse({ id, tag, needsCalibration, calibrations }: TimedItem, { startMs, endMs }: Period): TrainProblem[] {
  if (!needsCalibration) return [];
  const now = calibrations.filter(({ validFromMs, dueMs }) => validFromMs <= startMs && dueMs > startMs);
  const untilMs = Math.max(...now.map(({ dueMs }) => dueMs));
  if (now.length === 0 || untilMs >= endMs) return [];
  const hours = formatNumber((untilMs - startMs) / MS_PER_HOUR, 2);
  const needed = formatNumber((endMs - startMs) / MS_PER_HOUR, 2);
  const sentence = `The calibration of ${tag} lapses in ${hours} h; the run takes ${needed} h. Have it calibrated before, or use an equal unit.`;
  return [{ rule: 'calibration-in-force', items: [id], sentence }];
}

function promised({ id, tag, heldWindows }: TimedItem, period: Period): TrainProblem[] {
  const held = heldWindows.find(({ startMs, endMs }) => startMs < period.endMs && endMs > period.startMs);
  if (!held) return [];
  const from = new Date(held.startMs).toISOString().slice(0, 16).replace('T', ' ');
  const sentence = `${tag} is promised elsewhere from ${from} UTC on. Use an equal unit, or ask the manager.`;
  return [{ rule: 'frame-state', items: [id], sentence }];
}
