import { formatNumber } from '#libs/units/src/index.js';
import { checkTrain } from '#libs/matching/src/index.js';
import type {
  Item,
  Lab,
  LimitStops,
  LinkRole,
  MatchSettings,
  Needs,
  TimeWindow,
  Verdict,
} from '#libs/matching/src/index.js';

/** One thing that keeps a train from being used. */
export interface TrainProblem {
  rule: string;
  items: readonly string[];
  sentence: string;
}

export interface BenchTrain {
  frameId: string;
  links: readonly { role: string; itemId: string }[];
}

/** What the rules say about a train that is to be used in a period. */
export interface TrainFit {
  problems: TrainProblem[];
  cautions: string[];
  verdicts: readonly Verdict[];
  limitStops: LimitStops | null;
}

/** Who is on shift is the roster's business; at the bench it counts who stands there. */
const NOT_FOR_THE_BENCH = 'qualification';

/**
 * Everything that keeps a train from being used in the whole of a period: a rule that fails, a calibration that lapses within it,
 * an item that is promised elsewhere. Matching takes a lapse for a caution, because it may choose the time; the bench may not.
 */
export function trainFit(
  lab: Lab,
  train: BenchTrain,
  needs: Needs,
  period: TimeWindow,
  settings: MatchSettings,
): TrainFit {
  const links = train.links.map(({ role, itemId }) => ({ role: role as LinkRole, itemId }));
  const check = checkTrain(lab, { frameId: train.frameId, links }, needs, period, settings);
  if (!check) return { problems: [INCOMPLETE], cautions: [], verdicts: [], limitStops: null };
  const verdicts = check.verdicts.filter(({ rule }) => rule !== NOT_FOR_THE_BENCH);
  const failing = verdicts.filter(({ outcome }) => outcome === 'fail');
  const problems = [...failing, ...lapsing(lab, train, period)].map(({ rule, items, sentence }) => ({
    rule,
    items,
    sentence,
  }));
  return {
    problems: problems.filter(({ sentence }, at) => problems.findIndex((other) => other.sentence === sentence) === at),
    cautions: verdicts
      .filter(({ outcome, rule }) => outcome === 'caution' && rule !== 'calibration-in-force')
      .map(({ sentence }) => sentence),
    verdicts,
    limitStops: check.limitStops,
  };
}

const INCOMPLETE: TrainProblem = {
  rule: 'couplings',
  items: [],
  sentence:
    'The train is not whole: a frame, a load cell and something that holds the specimen are needed. Give the job back.',
};

/** Items whose calibration ends within the period, or that are promised elsewhere in it. */
function lapsing(lab: Lab, { frameId, links }: BenchTrain, period: TimeWindow): TrainProblem[] {
  const used = new Set([frameId, ...links.map(({ itemId }) => itemId)]);
  return lab.items
    .filter(({ id }) => used.has(id))
    .flatMap((item) => [...lapse(item, period), ...promised(item, period)]);
}

function lapse(item: Item, period: TimeWindow): TrainProblem[] {
  if (!item.needsCalibration) return [];
  const now = item.calibrations.filter(
    ({ validFromMs, dueMs }) => validFromMs <= period.startMs && dueMs > period.startMs,
  );
  const untilMs = Math.max(...now.map(({ dueMs }) => dueMs));
  if (now.length === 0 || untilMs >= period.endMs) return [];
  const hours = formatNumber((untilMs - period.startMs) / MS_PER_HOUR, 2);
  const needed = formatNumber((period.endMs - period.startMs) / MS_PER_HOUR, 2);
  return [
    {
      rule: 'calibration-in-force',
      items: [item.id],
      sentence: `The calibration of ${item.tag} lapses in ${hours} h; the run takes ${needed} h. Have it calibrated before, or use an equal unit.`,
    },
  ];
}

function promised({ id, tag, heldWindows }: Item, period: TimeWindow): TrainProblem[] {
  const held = heldWindows.find(({ startMs, endMs }) => startMs < period.endMs && endMs > period.startMs);
  if (!held) return [];
  const from = new Date(held.startMs).toISOString().slice(0, 16).replace('T', ' ');
  return [
    {
      rule: 'frame-state',
      items: [id],
      sentence: `${tag} is promised elsewhere from ${from} UTC on. Use an equal unit, or ask the manager.`,
    },
  ];
}

const MS_PER_HOUR = 3_600_000;
