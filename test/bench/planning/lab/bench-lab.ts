import type { Problem } from '#libs/planning/src/index.js';
import { dispatchPlan, RULE_NAMES } from '#test/support/dispatch-plan.js';
import type { Asked } from '../arguments.js';
import { runEngine } from '../run-instance.js';
import { makeLab } from './make-lab.js';
import { compareSmallCases } from './small-cases.js';

/** Labs of growing size, without and with a roster; two sizes are those that the acceptance names. */
const SIZES: readonly (readonly [frames: number, jobs: number, roster: boolean])[] = [
  [10, 50, false],
  [10, 100, true],
  [20, 200, false],
  [20, 200, true],
  [50, 500, false],
  [100, 2000, false],
  [100, 2000, true],
];

/** What the exact solver gets for each small case, s. */
const SECONDS_TO_PROVE = 30;

/** Plans generated labs and sets the engine beside every dispatch rule. */
export async function benchLab(asked: Asked): Promise<void> {
  const results = SIZES.map(([frames, jobs, roster]) => {
    const problem = makeLab({ frames, jobs, roster, seed: asked.seed });
    const rules = costsOfRules(problem);
    const best = Math.min(...Object.values(rules).map(({ cost }) => cost));
    const { plan, value, msToBest, evaluationsPerSecond, elapsedMs, trace } = runEngine(
      problem,
      asked.seconds,
      asked.seed,
    );
    const line = {
      frames,
      jobs,
      roster,
      earliestDue: rules['earliest due'],
      bestRule: best,
      engine: value,
      engineLate: plan.cost.weightedLateMin,
      engineChangeover: plan.cost.changeoverMin,
      msToBeatRules: trace.find(({ cost }) => cost < best - 1e-6)?.ms ?? null,
      msToBest,
      elapsedMs,
      evaluationsPerSecond,
    };
    if (!asked.json) console.log(JSON.stringify(line));
    return line;
  });
  const small = asked.peer ? await compareSmallCases(asked.seed, SECONDS_TO_PROVE) : [];
  if (!asked.json) for (const line of small) console.log(JSON.stringify(line));
  if (asked.json)
    console.log(JSON.stringify({ set: 'lab', seconds: asked.seconds, seed: asked.seed, results, small }, null, 1));
}

function costsOfRules(problem: Problem): Record<string, { cost: number; late: number; changeover: number }> {
  return Object.fromEntries(
    RULE_NAMES.map((rule) => {
      const { cost } = dispatchPlan(problem, rule);
      return [rule, { cost: cost.total, late: cost.weightedLateMin, changeover: cost.changeoverMin }];
    }),
  );
}
