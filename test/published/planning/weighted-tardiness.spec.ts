import { judgePlan, makePlan } from '#libs/planning/src/index.js';
import type { Plan } from '#libs/planning/src/index.js';
import { keptLines, keptSet } from './kept-set.js';
import type { KeptLine } from './kept-set.js';

// Sources and licences: test/published/README.md.
const TENTH = (name: string): boolean => /^wt40-\d*1$/.test(name);
const WITH_LATE_WORK = ['wt_sds_54', 'wt_sds_67', 'wt_sds_104'];
const MOST_ABOVE_PCT = 1;

/** Weighted tardiness of the order in which a plan works, worked out from the published figures alone. */
function tardinessOf(line: KeptLine, plan: Plan): number {
  const order = [...plan.bookings]
    .sort((a, b) => a.startMin - b.startMin)
    .map(({ jobId }) => Number(jobId.slice(1)) - 1);
  let ended = 0;
  let total = 0;
  order.forEach((job, at) => {
    const setup = at === 0 ? line.firstSetup?.[job] : line.setup?.[order[at - 1]!]![job];
    ended += (setup ?? 0) + line.work[job]!;
    total += line.weight[job]! * Math.max(0, ended - line.due[job]!);
  });
  return total;
}

describe('published instances of weighted tardiness on one machine', () => {
  const lines = new Map([...keptLines('a'), ...keptLines('b')].map((line) => [line.name, line]));

  it.each(keptSet('a').filter(({ name }) => TENTH(name)))('plans $name at its proven optimum of $best', (instance) => {
    const plan = makePlan(instance.problem, { iterations: 300, seed: 3 });
    expect(judgePlan(instance.problem, plan)).toEqual([]);
    expect(plan.cost.total).toBe(instance.best);
    expect(tardinessOf(lines.get(instance.name)!, plan)).toBe(instance.best);
  });

  it.each(keptSet('b').filter(({ name }) => WITH_LATE_WORK.includes(name)))(
    'plans $name with its setups near the best known value of $best',
    ({ name, best, problem }) => {
      const plan = makePlan(problem, { iterations: 600, seed: 3 });
      expect(judgePlan(problem, plan)).toEqual([]);
      expect(tardinessOf(lines.get(name)!, plan)).toBe(plan.cost.total);
      expect(plan.cost.total / best!).toBeLessThan(1 + MOST_ABOVE_PCT / 100);
    },
  );
});
