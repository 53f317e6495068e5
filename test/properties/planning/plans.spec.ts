import fc from 'fast-check';
import {
  checkProblem,
  construct,
  CONSTRUCTION_RULES,
  judgePlan,
  makePlan,
  tryMove,
  whereWouldItLand,
} from '#libs/planning/src/index.js';
import { randomLab } from './random-lab.js';

const labs = fc.record({
  seed: fc.integer({ min: 1, max: 1_000_000 }),
  frames: fc.integer({ min: 1, max: 6 }),
  jobs: fc.integer({ min: 1, max: 25 }),
  roster: fc.boolean(),
});

const lab = ({ seed, frames, jobs, roster }: { seed: number; frames: number; jobs: number; roster: boolean }) =>
  randomLab(seed, frames, jobs, roster);

describe('plans of random labs', () => {
  it('pose no flawed problem', () => {
    fc.assert(
      fc.property(labs, (size) => expect(checkProblem(lab(size))).toEqual([])),
      { numRuns: 50 },
    );
  });

  it('are correct by every dispatch rule', () => {
    const rules = fc.constantFrom(...CONSTRUCTION_RULES);
    fc.assert(
      fc.property(labs, rules, (size, rule) => {
        const problem = lab(size);
        expect(judgePlan(problem, construct(problem, rule))).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('are correct after a search', () => {
    fc.assert(
      fc.property(labs, (size) => {
        const problem = lab(size);
        expect(judgePlan(problem, makePlan(problem, { iterations: 150, seed: size.seed }))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('are the same for the same seed and rounds', () => {
    fc.assert(
      fc.property(labs, (size) => {
        const problem = lab(size);
        const options = { iterations: 60, seed: 5 };
        expect(makePlan(problem, options)).toEqual(makePlan(problem, options));
      }),
      { numRuns: 25 },
    );
  });

  it('never get worse by more rounds', () => {
    fc.assert(
      fc.property(labs, (size) => {
        const problem = lab(size);
        // What the search makes small: besides the plan's own cost, what it charges for a booking that the freeze should keep.
        const costs = [0, 20, 60, 200].map((iterations) => {
          let least = Infinity;
          makePlan(problem, { iterations, seed: 9, onProgress: ({ cost }) => (least = cost) });
          return least;
        });
        expect(costs).toEqual([...costs].sort((a, b) => b - a));
      }),
      { numRuns: 25 },
    );
  });

  it('stay correct when a new job is laid into them', () => {
    fc.assert(
      fc.property(labs, (size) => {
        const full = lab({ ...size, jobs: size.jobs + 1 });
        const newest = { ...full.jobs.at(-1)!, hold: false, pin: null, running: null };
        const problem = { ...full, jobs: full.jobs.slice(0, -1) };
        const { plan } = whereWouldItLand(problem, makePlan(problem, { iterations: 20, seed: 2 }), newest);
        expect(judgePlan({ ...problem, jobs: [...problem.jobs, newest] }, plan)).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });

  it('give a reason for every move that they refuse', () => {
    fc.assert(
      fc.property(labs, fc.nat(24), fc.nat(5), fc.nat(9000), (size, job, frame, startMin) => {
        const problem = lab(size);
        const plan = makePlan(problem, { iterations: 20, seed: 2 });
        const { id } = problem.jobs[job % problem.jobs.length]!;
        const answer = tryMove(problem, plan, id, problem.frames[frame % problem.frames.length]!.id, startMin);
        expect(answer.fits).toBe(answer.obstacles.length === 0);
      }),
      { numRuns: 150 },
    );
  });
});
