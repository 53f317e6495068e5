import fc from 'fast-check';
import { compile } from '#libs/planning/src/engine/schedule/model-of.js';
import { Schedule } from '#libs/planning/src/engine/schedule/schedule.js';
import { makePlan } from '#libs/planning/src/index.js';
import type { Problem } from '#libs/planning/src/index.js';
import { makeLab } from '#test/bench/planning/lab/make-lab.js';

/** Every order with every choice of candidates: the least cost that there is. */
function leastCost(problem: Problem): number {
  const { model } = compile(problem);
  const schedule = new Schedule(model);
  let least = Infinity;
  const choose = (job: number, candidate: number[], order: number[]): void => {
    if (job === model.jobs) {
      schedule.load({ order: Int32Array.from(order), candidate: Int32Array.from(candidate) });
      least = Math.min(least, schedule.cost);
      return;
    }
    for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++)
      choose(job + 1, [...candidate, c], order);
  };
  for (const order of ordersOf([...Array(model.jobs + model.visits).keys()])) choose(0, [], order);
  return least;
}

function ordersOf(tasks: number[]): number[][] {
  if (tasks.length < 2) return [tasks];
  return tasks.flatMap((task) => ordersOf(tasks.filter((other) => other !== task)).map((rest) => [task, ...rest]));
}

const small = (seed: number, jobs: number, roster: boolean): Problem => {
  const lab = makeLab({ frames: 2, jobs, roster, seed });
  return { ...lab, visits: [], items: lab.items.map((item) => ({ ...item, usable: null })) };
};

/** One unit in each pool: which unit is taken is a choice of the builder that trying all orders does not try. */
const withoutChoice = (problem: Problem): Problem => ({
  ...problem,
  jobs: problem.jobs.map((job) => ({
    ...job,
    candidates: job.candidates.map((one) => ({
      ...one,
      links: one.links.map(({ link, pool }) => ({ link, pool: pool.slice(0, 1) })),
    })),
  })),
});

describe('small cases', () => {
  it('are planned at the least cost that there is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.boolean(), (seed, roster) => {
        const problem = small(seed, 5, roster);
        expect(makePlan(problem, { iterations: 20_000, seed: 1 }).cost.total).toBeCloseTo(leastCost(problem), 6);
      }),
      { numRuns: 15 },
    );
  });

  it('never cost more without one of their jobs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.nat(3), (seed, gone) => {
        const problem = withoutChoice(small(seed, 4, false));
        const without = { ...problem, jobs: problem.jobs.filter((_, at) => at !== gone) };
        expect(leastCost(without)).toBeLessThanOrEqual(leastCost(problem) + 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});
