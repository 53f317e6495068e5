import { INCOMPLETE_TRAIN, trainProblems } from '#libs/bench/src/index.js';
import type { TrainProblem } from '#libs/bench/src/index.js';
import { checkTrain } from '#libs/matching/src/index.js';
import type { Lab, LimitStops, LinkRole, MatchSettings, Needs, TimeWindow, Verdict } from '#libs/matching/src/index.js';

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

/** Asks matching about a train, and the bench what of its answer keeps the train from being used in the whole period. */
export function trainFit(
  lab: Lab,
  { frameId, links: train }: BenchTrain,
  needs: Needs,
  period: TimeWindow,
  settings: MatchSettings,
): TrainFit {
  const links = train.map(({ role, itemId }) => ({ role: role as LinkRole, itemId }));
  const check = checkTrain(lab, { frameId, links }, needs, period, settings);
  if (!check) return { problems: [INCOMPLETE_TRAIN], cautions: [], verdicts: [], limitStops: null };
  const verdicts = check.verdicts.filter(({ rule }) => rule !== NOT_FOR_THE_BENCH);
  const used = new Set([frameId, ...links.map(({ itemId }) => itemId)]);
  const items = lab.items.filter(({ id }) => used.has(id));
  return {
    problems: trainProblems(verdicts, items, period),
    cautions: verdicts
      .filter(({ outcome, rule }) => outcome === 'caution' && rule !== 'calibration-in-force')
      .map(({ sentence }) => sentence),
    verdicts,
    limitStops: check.limitStops,
  };
}
