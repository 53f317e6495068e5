import { dispatchPlan, RULE_NAMES } from '#test/support/dispatch-plan.js';
import { openFrame, smallCandidate, smallJob, smallProblem } from '#test/support/small-plan.js';
import type { Job, Problem } from '../problem.js';
import { makePlan } from './make-plan.js';

/** One frame: weights 1, 5, 2 and 20, 10, 30 minutes of work, all due at minute 10. */
const threeJobs = smallProblem({
  frames: [openFrame('F1')],
  jobs: [
    smallJob('A', { candidates: [smallCandidate('F1', 20)], dueMin: 10, weight: 1 }),
    smallJob('B', { candidates: [smallCandidate('F1', 10)], dueMin: 10, weight: 5 }),
    smallJob('C', { candidates: [smallCandidate('F1', 30)], dueMin: 10, weight: 2 }),
  ],
});

const starts = (problem: Problem, iterations = 200): Record<string, number> =>
  Object.fromEntries(makePlan(problem, { iterations }).bookings.map(({ jobId, startMin }) => [jobId, startMin]));

describe('makePlan', () => {
  it('runs the order that costs least', () => {
    // B first is in time; then C (30 late, weight 2) and A (50 late), 110, beats A (20 late) and C (50 late, weight 2), 120.
    expect(starts(threeJobs)).toEqual({ B: 0, C: 10, A: 40 });
  });

  it('asks first whom the least other work needs', () => {
    const shifts = [{ startMin: 0, endMin: 480 }];
    const problem = smallProblem({
      frames: [openFrame('F1'), openFrame('F2')],
      technicians: [
        { id: 'both', shifts, authorisations: ['tensile', 'flexure'] },
        { id: 'tensile only', shifts, authorisations: ['tensile'] },
      ],
      jobs: [
        smallJob('A', { candidates: [smallCandidate('F1', 60)], authorisation: 'tensile', attended: 'throughout' }),
        smallJob('B', { candidates: [smallCandidate('F2', 60)], authorisation: 'flexure', attended: 'throughout' }),
      ],
    });
    const { bookings } = makePlan(problem, { iterations: 0 });
    expect(bookings.map(({ jobId, startMin, stints }) => [jobId, startMin, stints[0]!.technicianId])).toEqual([
      ['A', 0, 'tensile only'],
      ['B', 0, 'both'],
    ]);
  });

  it('needs a limit, and a clock where the limit is time', () => {
    expect(() => makePlan(threeJobs, { timeMs: 10 })).toThrow('timeMs needs now');
  });

  it('stops when it is told to, and still answers with a plan', () => {
    let asked = 0;
    const plan = makePlan(threeJobs, { iterations: 1_000_000, shouldStop: () => ++asked > 3 });
    expect(plan.bookings).toHaveLength(3);
    expect(asked).toBeLessThan(10);
  });

  it('refuses a flawed problem, naming what is wrong, where, and what is allowed', () => {
    const flawed = { ...threeJobs, jobs: threeJobs.jobs.map((job) => (job.id === 'B' ? { ...job, weight: -1 } : job)) };
    expect(() => makePlan(flawed, { iterations: 1 })).toThrow(
      'This cannot be planned: jobs/B/weight is -1; allowed is 0 or more. Correct it and plan again.',
    );
  });

  it('tells of each better plan, and each costs less than the last', () => {
    const costs: number[] = [];
    makePlan(threeJobs, { iterations: 500, onProgress: ({ cost }) => costs.push(cost) });
    expect(costs.length).toBeGreaterThan(0);
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
  });

  it('says why a job is not in the plan', () => {
    const jobs: Job[] = [
      smallJob('held', { candidates: [smallCandidate('F1', 20)], hold: true }),
      smallJob('no train', {}),
      smallJob('too long', { candidates: [smallCandidate('F1', 20_000)] }),
      smallJob('after it', { candidates: [smallCandidate('F1', 20)], after: ['held'] }),
    ];
    expect(makePlan(smallProblem({ frames: [openFrame('F1')], jobs }), { iterations: 5 }).unplaced).toEqual([
      { id: 'held', kind: 'job', reason: 'held' },
      { id: 'no train', kind: 'job', reason: 'no-candidate' },
      { id: 'too long', kind: 'job', reason: 'no-room-in-horizon' },
      { id: 'after it', kind: 'job', reason: 'waits-for-unplaced' },
    ]);
  });

  it('sets a calibration visit where the item is not needed, and before it runs out', () => {
    const lab = smallProblem({
      frames: [openFrame('F1')],
      items: [{ id: 'C', usable: [{ startMin: 0, endMin: 300 }] }],
      jobs: [
        smallJob('A', { candidates: [smallCandidate('F1', 100, ['C'])], dueMin: 100, weight: 9 }),
        smallJob('B', { candidates: [smallCandidate('F1', 100, ['C'])], dueMin: 400 }),
      ],
      visits: [{ id: 'V', itemId: 'C', durationMin: 150, earliestMin: 0, beforeMin: 300, inForceUntilMin: 9_000 }],
    });
    const plan = makePlan(lab, { iterations: 300 });
    expect(plan.bookings.map(({ jobId, startMin }) => [jobId, startMin])).toEqual([
      ['A', 0],
      ['B', 250],
    ]);
    expect(plan.visits).toEqual([{ visitId: 'V', itemId: 'C', startMin: 100, endMin: 250 }]);
  });

  it('stops work at the end of a shift only between specimens', () => {
    const open = [
      { startMin: 0, endMin: 100 },
      { startMin: 500, endMin: 700 },
    ];
    const candidate = { ...smallCandidate('F1', 30), specimens: 5 };
    const problem = smallProblem({
      frames: [openFrame('F1', open)],
      jobs: [smallJob('A', { candidates: [candidate] })],
    });
    // Three specimens fit into the first 100 minutes, the other two wait for the morning.
    expect(
      makePlan(problem, { iterations: 5 }).bookings[0]!.stints.map(({ startMin, endMin }) => [startMin, endMin]),
    ).toEqual([
      [0, 90],
      [500, 560],
    ]);
  });

  it('keeps what starts inside the freeze window, and moves what does not', () => {
    const published = { bookings: [{ jobId: 'A', frameId: 'F1', setupStartMin: 0, startMin: 0, items: {} }] };
    expect(starts({ ...threeJobs, published, freezeUntilMin: 60 }).A).toBe(0);
    // B first is in time and moves A by 10 minutes only; A last would gain 10 more, less than a move costs.
    expect(starts({ ...threeJobs, published, freezeUntilMin: 0 }).A).toBe(10);
  });
});

describe('the dispatch rules', () => {
  it.each(RULE_NAMES)('make a whole plan by %s', (rule) => {
    expect(dispatchPlan(threeJobs, rule).bookings).toHaveLength(3);
  });
});
