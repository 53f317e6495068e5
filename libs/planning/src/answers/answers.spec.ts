import {
  openFrame,
  smallBooking,
  smallCandidate,
  smallJob,
  smallPlan,
  smallProblem,
} from '#test/support/small-plan.js';
import { causesOfLateness } from './causes-of-lateness.js';
import { comparePlans } from './compare-plans.js';
import { learnSpread, USUAL_SPREAD } from './learn-durations.js';
import { loadByFrame } from './load-by-frame.js';
import { poolLoads } from './pool-loads.js';
import { promiseDates } from './promise-dates.js';
import { changesToTry, whatWouldHelpMost, withChange } from './what-would-help.js';
import { whyThisFrame } from './why-this-frame.js';

// Two frames, one pair of grips G: B runs on F2 after A on F1 gave the grips back.
const problem = smallProblem({
  frames: [openFrame('F1'), openFrame('F2')],
  items: [{ id: 'G', usable: null }],
  jobs: [
    smallJob('A', { candidates: [smallCandidate('F1', 90, ['G'])], dueMin: 200 }),
    smallJob('B', {
      candidates: [smallCandidate('F2', 50, ['G']), smallCandidate('F1', 50, ['G'])],
      dueMin: 100,
      releaseMin: 30,
    }),
  ],
});
const plan = smallPlan(
  [smallBooking('A', 'F1', 0, 10, 100, { ends: 'G' }), smallBooking('B', 'F2', 100, 112, 162, { ends: 'G' })],
  {
    weightedLateMin: 62,
    lateJobs: 1,
  },
);

describe('the causes of lateness', () => {
  it('tell the whole time from now to the end, stretch by stretch', () => {
    expect(causesOfLateness(problem, plan, 'B')).toEqual([
      { kind: 'release', minutes: 30, jobId: null, itemId: null },
      { kind: 'item-busy', minutes: 70, jobId: 'A', itemId: 'G' },
      { kind: 'changeover', minutes: 12, jobId: null, itemId: null },
      { kind: 'work', minutes: 50, jobId: null, itemId: null },
    ]);
  });

  it('are none for a job in time', () => {
    expect(causesOfLateness(problem, plan, 'A')).toEqual([]);
  });

  it('name closed hours when nothing else stood in the way', () => {
    const night = smallProblem({
      frames: [openFrame('F1', [{ startMin: 60, endMin: 500 }])],
      jobs: [smallJob('A', { candidates: [smallCandidate('F1', 20)], dueMin: 50 })],
    });
    expect(causesOfLateness(night, smallPlan([smallBooking('A', 'F1', 60, 60, 80)]), 'A')).toEqual([
      { kind: 'closed', minutes: 60, jobId: null, itemId: null },
      { kind: 'work', minutes: 20, jobId: null, itemId: null },
    ]);
  });
});

describe('load and pools', () => {
  it('count booked and open minutes of a frame within a span only', () => {
    const spans = [
      { startMin: 0, endMin: 120 },
      { startMin: 120, endMin: 240 },
    ];
    expect(loadByFrame(problem, plan, spans).filter(({ frameId }) => frameId === 'F2')).toEqual([
      { frameId: 'F2', span: spans[0], bookedMin: 20, openMin: 120, share: 20 / 120 },
      { frameId: 'F2', span: spans[1], bookedMin: 42, openMin: 120, share: 42 / 120 },
    ]);
  });

  it('show a pool as binding when a job begins the minute that its unit comes free on another frame', () => {
    expect(poolLoads(problem, plan)).toEqual([{ units: ['G'], link: 'ends', share: 1, waiting: ['B'], binds: true }]);
  });
});

describe('why a job is on its frame', () => {
  it('puts the chosen frame first, with its changeover, and says when the other one is free', () => {
    expect(whyThisFrame(problem, plan, 'B')).toEqual([
      { frameId: 'F2', chosen: true, changeoverMin: 12, fittedLinks: 0, links: 1, freeAtMin: 100 },
      { frameId: 'F1', chosen: false, changeoverMin: null, fittedLinks: 1, links: 1, freeAtMin: 100 },
    ]);
  });
});

describe('the comparison of two plans', () => {
  it('names what is later, earlier, elsewhere, new and gone', () => {
    const after = smallPlan(
      [smallBooking('B', 'F1', 100, 100, 150, { ends: 'G' }), smallBooking('C', 'F2', 0, 0, 10)],
      { weightedLateMin: 50, lateJobs: 1 },
    );
    expect(comparePlans(plan, after)).toEqual({
      ...{ weightedLateMin: -12, lateJobs: 0, changeoverMin: 0, later: [], earlier: [{ jobId: 'B', minutes: -12 }] },
      ...{ otherFrame: [{ jobId: 'B', from: 'F2', to: 'F1' }], added: ['C'], gone: ['A'] },
    });
  });
});

describe('promise dates', () => {
  const options = { replays: 2_000, seed: 7 };

  it('are the plan itself when every job takes what was planned', () => {
    const sure = promiseDates(problem, plan, { ...options, spreadOf: () => ({ logMean: 0, logSd: 0 }) });
    expect(sure).toEqual([
      { jobId: 'A', done50Min: 100, done80Min: 100, lateShare: 0 },
      { jobId: 'B', done50Min: 162, done80Min: 162, lateShare: 1 },
    ]);
  });

  it('come later for a surer date, and the first job meets the quantiles of its own spread', () => {
    const [first] = promiseDates(problem, plan, { ...options, spreadOf: () => ({ logMean: 0, logSd: 0.25 }) });
    // Log-normal: median 10 + 90, 80 % point 10 + 90·exp(0.25 · 0.8416) = 121.1 min.
    expect(first!.done50Min).toBeGreaterThan(97);
    expect(first!.done50Min).toBeLessThan(103);
    expect(Math.abs(first!.done80Min - 121.1)).toBeLessThan(4);
  });

  it('are the same for the same seed', () => {
    const spreadOf = () => USUAL_SPREAD;
    expect(promiseDates(problem, plan, { ...options, spreadOf })).toEqual(
      promiseDates(problem, plan, { ...options, spreadOf }),
    );
  });

  it('let work stand still while the frame is closed', () => {
    const night = smallProblem({
      frames: [
        openFrame('F1', [
          { startMin: 0, endMin: 60 },
          { startMin: 300, endMin: 900 },
        ]),
      ],
      jobs: [smallJob('A', { candidates: [smallCandidate('F1', 100)] })],
    });
    const booking = {
      ...smallBooking('A', 'F1', 0, 0, 340),
      stints: [
        { kind: 'work' as const, startMin: 0, endMin: 60, technicianId: null },
        { kind: 'work' as const, startMin: 300, endMin: 340, technicianId: null },
      ],
    };
    expect(
      promiseDates(night, smallPlan([booking]), { ...options, spreadOf: () => ({ logMean: 0, logSd: 0 }) })[0]!
        .done80Min,
    ).toBe(340);
  });
});

describe('learned durations', () => {
  it('stay at the assumption without data, and move towards the data with them', () => {
    expect(learnSpread([])).toEqual(USUAL_SPREAD);
    const slow = Array.from({ length: 45 }, () => ({ plannedMin: 60, tookMin: 90 }));
    // 45 jobs at log 1.5 = 0.4055, weighed against 5 at 0: 0.4055 · 45/50.
    expect(learnSpread(slow).logMean).toBeCloseTo(0.36492, 4);
  });
});

describe('what would help', () => {
  const extra = [{ startMin: 600, endMin: 700 }];

  it('tries a unit of the pool that binds, and a shift on the frame with late work', () => {
    expect(changesToTry(problem, plan, extra)).toEqual([
      { kind: 'one-more-unit', link: 'ends', likeUnit: 'G' },
      { kind: 'extra-shift', frameId: 'F2', shift: extra[0] },
    ]);
  });

  it('puts another unit into every pool in which the first one stands', () => {
    const wider = withChange(problem, { kind: 'one-more-unit', link: 'ends', likeUnit: 'G' });
    expect(wider.items.map(({ id }) => id)).toEqual(['G', 'G+1']);
    expect(wider.jobs.flatMap(({ candidates }) => candidates.map(({ links }) => links[0]!.pool))).toEqual([
      ['G', 'G+1'],
      ['G', 'G+1'],
      ['G', 'G+1'],
    ]);
  });

  it('ranks by what a new plan saves, and ends early when it is told to', () => {
    const replan = (changed: typeof problem) =>
      smallPlan([], changed.items.length > 1 ? { weightedLateMin: 2 } : { weightedLateMin: 62, lateJobs: 1 });
    const changes = changesToTry(problem, plan, extra);
    expect(
      whatWouldHelpMost(problem, plan, changes, replan).map(({ change, savesWeightedLateMin }) => [
        change.kind,
        savesWeightedLateMin,
      ]),
    ).toEqual([
      ['one-more-unit', 60],
      ['extra-shift', 0],
    ]);
    expect(whatWouldHelpMost(problem, plan, changes, replan, () => false)).toHaveLength(1);
  });
});
