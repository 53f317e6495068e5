import fc from 'fast-check';
import { Random } from '#libs/planning/src/engine/random.js';
import { compile } from '#libs/planning/src/engine/schedule/model-of.js';
import { DISPATCH_RULES } from '#libs/planning/src/engine/schedule/dispatch-rules.js';
import { Schedule } from '#libs/planning/src/engine/schedule/schedule.js';
import { makeLab } from '#test/bench/planning/lab/make-lab.js';
import { randomLab } from './random-lab.js';

const labs = fc.record({
  seed: fc.integer({ min: 1, max: 1_000_000 }),
  frames: fc.integer({ min: 1, max: 8 }),
  jobs: fc.integer({ min: 2, max: 40 }),
  plain: fc.boolean(),
});

describe('the cost of an altered order', () => {
  it('is what building all of it anew costs', () => {
    fc.assert(
      fc.property(labs, ({ seed, frames, jobs, plain }) => {
        const problem = plain
          ? makeLab({ frames, jobs, roster: false, seed })
          : randomLab(seed, frames, jobs, seed % 2 === 0);
        const { model } = compile(problem);
        const schedule = new Schedule(model);
        const start = DISPATCH_RULES[0]!.order(model);
        schedule.load(start);
        const random = new Random(seed);
        for (let move = 0; schedule.tasks > 1 && move < 60; move++) alterAndCompare(schedule, random);
      }),
      { numRuns: 120 },
    );
  });
});

/** Moves a random task, with another candidate now and then, and keeps every second move. */
function alterAndCompare(schedule: Schedule, random: Random): void {
  const { model, order, candidate, putAt } = schedule;
  const from = random.below(schedule.tasks);
  const to = random.below(schedule.tasks);
  const task = order[from]!;
  const first = Math.min(from, to, putAt[task]!);
  const had = candidate[task]!;
  if (task < model.jobs && random.below(2) === 0) {
    candidate[task] = model.candidateAt[task]! + random.below(model.candidateAt[task + 1]! - model.candidateAt[task]!);
  }
  schedule.shift(from, to);
  const told = schedule.evaluate(first, Infinity, task, task);
  const anew = new Schedule(model);
  anew.load({ order, candidate });
  expect(told).toBeCloseTo(anew.cost, 4);
  if (random.below(2) === 0) return schedule.settle(first);
  schedule.shift(to, from);
  candidate[task] = had;
}
