import fc from 'fast-check';
import { judgePlan, makePlan } from '#libs/planning/src/index.js';
import type { Problem } from '#libs/planning/src/index.js';
import { asLab } from '#test/bench/planning/as-lab.js';
import { problemOf, TARDINESS } from '#test/bench/planning/read/instance.js';

const minutes = fc.integer({ min: 1, max: 60 });

/** Machines with setups, releases and due dates, as published instances have them. */
const machines: fc.Arbitrary<Problem> = fc
  .record({ frames: fc.integer({ min: 1, max: 4 }), jobs: fc.integer({ min: 1, max: 12 }) })
  .chain(({ frames, jobs }) => {
    const perJob = fc.array(minutes, { minLength: jobs, maxLength: jobs });
    return fc.record({
      work: fc.array(perJob, { minLength: frames, maxLength: frames }),
      setup: fc.array(perJob, { minLength: jobs, maxLength: jobs }).map((rows) => [rows]),
      weight: perJob,
      due: perJob,
      release: perJob,
    });
  })
  .map((figures) => problemOf(figures, TARDINESS));

describe('a published instance as a lab would state it', () => {
  it('gets the same plan, with somebody at every job and units of its own', () => {
    fc.assert(
      fc.property(machines, (problem) => {
        const lab = asLab(problem);
        const plan = makePlan(lab, { iterations: 200, seed: 1 });
        expect(judgePlan(lab, plan)).toEqual([]);
        expect(plan.cost.total).toBe(makePlan(problem, { iterations: 200, seed: 1 }).cost.total);
        expect(plan.bookings.every(({ stints }) => stints.every(({ technicianId }) => technicianId !== null))).toBe(
          true,
        );
        expect(plan.bookings.every(({ items }) => items['fixture'] !== undefined)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});
