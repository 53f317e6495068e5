import fc from 'fast-check';
import { checkProblem, insertJobs, judgePlan, makePlan } from '#libs/planning/src/index.js';
import { dispatchPlan, RULE_NAMES } from '#test/support/dispatch-plan.js';
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
    const rules = fc.constantFrom(...RULE_NAMES);
    fc.assert(
      fc.property(labs, rules, (size, rule) => {
        const problem = lab(size);
        expect(judgePlan(problem, dispatchPlan(problem, rule))).toEqual([]);
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

  it('stay as they are when they are published and nothing changes', () => {
    fc.assert(
      fc.property(labs, (size) => {
        const problem = { ...lab(size), published: null, freezeUntilMin: 0 };
        const plan = makePlan(problem, { iterations: 60, seed: 3 });
        const bookings = plan.bookings.map((booking) => ({
          ...booking,
          technicianId: booking.stints.find(({ technicianId }) => technicianId !== null)?.technicianId ?? null,
        }));
        const again = makePlan({ ...problem, published: { ...plan, bookings } }, { iterations: 0, seed: 4 });
        expect(again.bookings).toEqual(plan.bookings);
        expect(again.visits).toEqual(plan.visits);
      }),
      { numRuns: 50 },
    );
  });

  it('stay correct when a new job is laid into them', () => {
    fc.assert(
      fc.property(labs, (size) => {
        const full = lab({ ...size, jobs: size.jobs + 1 });
        const newest = { ...full.jobs.at(-1)!, hold: false, pin: null, running: null };
        const problem = { ...full, jobs: full.jobs.slice(0, -1) };
        const published = makePlan(problem, { iterations: 20, seed: 2 });
        const wider = { ...problem, jobs: [...problem.jobs, newest], published };
        const plan = insertJobs(wider, [newest.id], { iterations: 200 });
        expect(judgePlan(wider, plan)).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });
});
