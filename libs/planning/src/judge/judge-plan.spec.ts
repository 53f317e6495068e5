import { makePlan } from '../engine/make-plan.js';
import type { Booking, Plan } from '../plan.js';
import { DEFAULT_OBJECTIVE } from '../problem.js';
import type { Job, Problem } from '../problem.js';
import { judgePlan } from './judge-plan.js';

const candidate = (frameId: string) => ({
  frameId,
  perSpecimenMin: 30,
  specimens: 3,
  links: [{ link: 'cell', pool: ['C1', 'C2'] }],
  family: null,
  temperatureC: null,
});

const job = (id: string, frameId: string, more: Partial<Job> = {}): Job => ({
  id,
  releaseMin: 500,
  dueMin: 600,
  weight: 2,
  after: [],
  candidates: [candidate(frameId)],
  attended: 'throughout',
  authorisation: 'flexure',
  hold: false,
  pin: null,
  running: null,
  ...more,
});

const rig = { items: {}, family: null, temperatureC: null };
const day = [{ startMin: 480, endMin: 960 }];
const frame = (id: string) => ({ id, open: day, warmUpMin: 0, warmUpAfterMin: 0, rig });

const problem: Problem = {
  horizonMin: 2000,
  frames: [frame('F1'), frame('F2')],
  items: [
    { id: 'C1', usable: [{ startMin: 0, endMin: 900 }] },
    { id: 'C2', usable: null },
  ],
  technicians: [{ id: 'T1', shifts: day, authorisations: ['flexure'] }],
  jobs: [job('A', 'F1'), job('B', 'F2', { after: ['A'] }), job('C', 'F1', { hold: true })],
  visits: [{ id: 'V', itemId: 'C1', durationMin: 60, earliestMin: 0, beforeMin: 900, inForceUntilMin: 5000 }],
  changeover: {
    byLinkMin: { cell: 20 },
    checkedLinks: ['cell'],
    checkMin: 5,
    rampCPerMin: 1,
    soakMin: 0,
    families: null,
  },
  objective: DEFAULT_OBJECTIVE,
  published: null,
  freezeUntilMin: 0,
};

const plan = makePlan(problem, { iterations: 200 });

/** The plan with one booking altered. */
function spoilt(jobId: string, alter: (booking: Booking) => Booking): Plan {
  return { ...plan, bookings: plan.bookings.map((one) => (one.jobId === jobId ? alter(one) : one)) };
}

/** The whole booking, this many minutes later. */
const later =
  (min: number) =>
  (one: Booking): Booking => ({
    ...one,
    setupStartMin: one.setupStartMin + min,
    startMin: one.startMin + min,
    endMin: one.endMin + min,
    stints: one.stints.map((stint) => ({ ...stint, startMin: stint.startMin + min, endMin: stint.endMin + min })),
  });

const rulesBroken = (broken: Plan, by: Problem = problem): string[] => judgePlan(by, broken).map(({ rule }) => rule);

describe('the judge', () => {
  it('finds nothing in a plan that keeps every rule', () => {
    expect(judgePlan(problem, plan)).toEqual([]);
    // Setup of a cell: 20 min and 5 min for its check, done when the specimens are there.
    expect(plan.bookings[0]).toMatchObject({ jobId: 'A', setupMin: 25, startMin: 505, endMin: 595 });
  });

  it.each<[string, Plan]>([
    ['accounted-for-once', { ...plan, bookings: plan.bookings.slice(1) }],
    ['accounted-for-once', { ...plan, bookings: [...plan.bookings, plan.bookings[0]!] }],
    ['not-a-candidate', spoilt('A', (one) => ({ ...one, frameId: 'F2' }))],
    ['unit-not-in-pool', spoilt('A', (one) => ({ ...one, items: { cell: 'C9' } }))],
    ['link-not-needed', spoilt('A', (one) => ({ ...one, items: { ...one.items, grips: 'C2' } }))],
    ['changeover-time', spoilt('A', (one) => ({ ...one, setupMin: 24 }))],
    ['setup-in-one-piece', spoilt('A', (one) => ({ ...one, stints: one.stints.slice(1) }))],
    ['work-before-setup-done', spoilt('A', (one) => ({ ...one, startMin: one.startMin - 1 }))],
    ['work-complete', spoilt('A', (one) => ({ ...one, stints: one.stints.slice(0, 1) }))],
    ['released', spoilt('A', later(-6))],
    ['comes-after', spoilt('B', later(-60))],
    ['technician-in-one-place', spoilt('B', later(-60))],
    ['frame-open', spoilt('B', later(300))],
    ['on-shift', spoilt('B', later(300))],
    [
      'somebody-there',
      spoilt('A', (one) => ({ ...one, stints: one.stints.map((stint) => ({ ...stint, technicianId: null })) })),
    ],
    ['inside-horizon', spoilt('B', later(1500))],
    ['visit-as-asked', { ...plan, visits: [{ ...plan.visits[0]!, endMin: plan.visits[0]!.endMin + 1 }] }],
    ['cost-as-stated', { ...plan, cost: { ...plan.cost, changeoverMin: plan.cost.changeoverMin - 1 } }],
  ])('names %s where it is broken', (rule, broken) => {
    expect(rulesBroken(broken)).toContain(rule);
  });

  it('lets a booking begin in the minute in which another ends, and not one earlier', () => {
    const two: Problem = { ...problem, jobs: [job('A', 'F1'), job('B', 'F1')], technicians: null, visits: [] };
    const good = makePlan(two, { iterations: 100 });
    const [first, second] = [...good.bookings].sort((a, b) => a.startMin - b.startMin) as [Booking, Booking];
    expect(second.setupStartMin).toBe(first.endMin);
    const touching: Plan = { ...good, bookings: [first, later(-1)(second)] };
    expect(judgePlan(two, touching)).toContainEqual({
      rule: 'one-test-at-a-time',
      of: [first.jobId, second.jobId],
      byMin: 1,
      facts: { frameId: 'F1' },
    });
  });

  it('refuses a unit whose calibration runs out a minute before the job ends', () => {
    const untilMin = (endMin: number): Problem => ({
      ...problem,
      items: [
        { id: 'C1', usable: [{ startMin: 0, endMin }] },
        { id: 'C2', usable: [{ startMin: 0, endMin }] },
      ],
      visits: [],
    });
    const withoutVisit = { ...plan, visits: [] };
    const lastEnd = Math.max(...plan.bookings.map(({ endMin }) => endMin));
    expect(rulesBroken(withoutVisit, untilMin(lastEnd))).not.toContain('unit-in-force');
    expect(rulesBroken(withoutVisit, untilMin(lastEnd - 1))).toContain('unit-in-force');
  });

  it('sees a held job planned, a pin left and a running job moved', () => {
    const held: Problem = { ...problem, jobs: problem.jobs.map((one) => ({ ...one, hold: one.id !== 'C' })) };
    expect(rulesBroken(plan, held)).toContain('held-job-planned');
    const pinned: Problem = {
      ...problem,
      jobs: problem.jobs.map((one) => (one.id === 'A' ? { ...one, pin: { frameId: 'F1', startMin: 506 } } : one)),
    };
    expect(rulesBroken(plan, pinned)).toContain('pin-kept');
    const running = { frameId: 'F1', items: { cell: 'C1' }, startMin: 0, endMin: 100 };
    const started: Problem = {
      ...problem,
      jobs: problem.jobs.map((one) => (one.id === 'A' ? { ...one, running } : one)),
    };
    expect(rulesBroken(plan, started)).toContain('running-job-moved');
  });
});
