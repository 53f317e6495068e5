import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { judgePlan, makePlan } from '#libs/planning/src/index.js';
import { problemOf, TARDINESS } from '#test/bench/planning/read/instance.js';

// One machine, sequence-dependent setups, weighted tardiness, 8 to 14 jobs. Made by the published rule of Cicirello (2003),
// "Weighted Tardiness Scheduling with Sequence-Dependent Setups: A Benchmark Library", seeds 100 to 111; each optimum was proven
// by dynamic programming over subsets (those of 8 and 10 jobs also by trying every order).
interface Small {
  name: string;
  p: number[];
  w: number[];
  d: number[];
  /** Last row: before the first job. */
  s: number[][];
  optimal: number;
}

const lines = readFileSync(join(import.meta.dirname, 'small-with-setups.dat'), 'utf8')
  .trim()
  .split('\n');
const instances = lines.map((line) => JSON.parse(line) as Small);

describe('proven optima of small instances with setups', () => {
  it.each(instances)('$name is planned at its optimum of $optimal', ({ p, w, d, s, optimal }) => {
    const setup = [s.slice(0, p.length)];
    const problem = problemOf({ work: [p], setup, firstSetup: s[p.length]!, weight: w, due: d }, TARDINESS);
    const plan = makePlan(problem, { iterations: 400, seed: 3 });
    expect(judgePlan(problem, plan)).toEqual([]);
    expect(plan.cost.total).toBe(optimal);
  });
});
