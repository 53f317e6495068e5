import { jest } from '@jest/globals';
import { matchJob } from '#apps/worker/src/replan/match-job.js';
import { outcomeOf } from '#apps/worker/src/replan/outcome-of.js';
import { problemOf } from '#apps/worker/src/replan/problem-of.js';
import type { PlanningTask } from '#apps/worker/src/replan/problem-of.js';
import { MS_PER_MINUTE } from '#libs/calendar/src/index.js';
import type { ItemView, Page, PlanView } from '#libs/contract/src/index.js';
import { judgePlan, makePlan } from '#libs/planning/src/index.js';
import type { Plan } from '#libs/planning/src/index.js';
import { DEMO_PASSWORD, readPlanFacts, RequestEntity } from '#libs/records/src/index.js';
import type { PlanFacts } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { labClock } from '../support/lab-clock.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { until } from '../support/until.js';
import { setUpLab } from './story-steps.js';

jest.setTimeout(300_000);

/** Enough to find what a lab's planning seconds find. */
const ROUNDS = 10_000;

/** A plan of the lab's own problem, which the judge has passed. */
function planned(facts: PlanFacts, seed: number): { task: PlanningTask; plan: Plan } {
  const task = problemOf(facts, matchJob);
  const plan = makePlan(task.problem, { iterations: ROUNDS, seed });
  expect(judgePlan(task.problem, plan)).toEqual([]);
  return { task, plan };
}

/** The facts once that plan is the published one. */
function withPublished(facts: PlanFacts, { task: { originMs }, plan }: ReturnType<typeof planned>): PlanFacts {
  const at = (minute: number) => originMs + minute * MS_PER_MINUTE;
  return {
    ...facts,
    published: {
      ...{ id: '', version: 1 },
      bookings: plan.bookings.map(({ jobId, frameId, setupStartMin, startMin, items, stints }) => ({
        ...{ jobId, frameId, setupMs: at(setupStartMin), startMs: at(startMin) },
        technicianId: stints.find(({ technicianId }) => technicianId !== null)?.technicianId ?? null,
        train: Object.entries(items).map(([role, itemId]) => ({ role, itemId })),
      })),
      order: plan.order,
      visits: plan.visits.map(({ itemId, startMin }) => ({ itemId, startMs: at(startMin) })),
    },
  };
}

describe('the plan of the demo lab', () => {
  let lab: Lab;
  let manager: Client;
  let facts: PlanFacts;

  beforeAll(async () => {
    lab = await startLab({ filled: 'demo' });
    manager = await lab.signIn('ruth.calloway@northmoor.example', DEMO_PASSWORD);
    await setUpLab(manager, { planningSeconds: 0.5 });
    facts = { ...(await readPlanFacts(lab.records, labClock.nowMs())), published: null };
  });
  afterAll(() => lab?.stop());

  it('says of a job pinned to a faulty frame just that; the job is late, has no date, and the lane is closed', async () => {
    await until(
      async () =>
        (await manager.get<PlanView>('/plan')).status === 200 || (await manager.post('/plan/replan', {}), false),
    );
    const before = (await manager.get<PlanView>('/plan')).body;
    const booking = before.lanes
      .flatMap(({ bookings }) => bookings)
      .find(({ state, dueAt }) => (state === 'ready' || state === 'waiting') && dueAt !== null)!;
    await lab.records.query('update job set pin_frame_id = $2 where id = $1', [booking.jobId, booking.frameId]);
    const frame = (await manager.get<Page<ItemView>>('/items?kind=frame')).body.rows.find(
      ({ id }) => id === booking.frameId,
    )!;
    const fault = await manager.post(`/items/${frame.id}/faults`, { what: 'The crosshead drifts.' });
    expect(fault.status).toBeLessThan(300);
    const plan = await until(async () => {
      const now = (await manager.get<PlanView>('/plan')).body;
      return now.unplaced.some(({ jobId }) => jobId === booking.jobId) ? now : null;
    }, 120_000);
    const sentence = `It is pinned to ${frame.tag}, which has an open fault. Unpin it, or put ${frame.tag} back into service.`;
    expect(plan.unplaced.find(({ jobId }) => jobId === booking.jobId)!.reasons).toEqual([sentence]);
    expect(plan.late.find(({ jobId }) => jobId === booking.jobId)).toMatchObject({ endsAt: null });
    expect(plan.changes.find(({ jobId }) => jobId === booking.jobId)).toMatchObject({ is: null, why: sentence });
    const lane = plan.lanes.find((one) => one.frame.id === frame.id)!;
    expect(lane.open).toEqual([]);
    expect(lane.down[0]).toMatchObject({
      kind: 'faulty',
      why: `${frame.tag} has an open fault: The crosshead drifts.`,
    });
    const request = await lab.records.manager.findOneByOrFail(RequestEntity, { id: booking.requestId! });
    expect([request.promise50At, request.promise80At]).toEqual([null, null]);
    expect(request.promiseNote).toContain('has no place in the plan');
  });

  it('still tells what moved last, and by which plan, once a newer plan moves nothing', async () => {
    const told = new Map<number, PlanView['changes']>();
    const quiet = await until(async () => {
      const { version, changes, changedBy } = (await manager.get<PlanView>('/plan')).body;
      if (changedBy?.version === version) told.set(version, changes);
      if (changedBy && changedBy.version < version && told.has(changedBy.version)) return { changes, changedBy };
      await manager.post('/plan/replan', {});
      return null;
    }, 120_000);
    expect(quiet.changes.length).toBeGreaterThan(0);
    expect(quiet.changes).toEqual(told.get(quiet.changedBy.version));
  }, 150_000);

  // In the hours before a stop the freeze window pins jobs that the search had placed later.
  it.each([0, 4, 9, 17])('%d h from now, stays as it is unless a move gains more than it costs', async (hours) => {
    const atMs = labClock.nowMs() + hours * 60 * MS_PER_MINUTE;
    const facts = { ...(await readPlanFacts(lab.records, atMs)), published: null };
    const first = planned(facts, 1);
    const known = withPublished(facts, first);
    const { problem } = problemOf(known, matchJob);
    const kept = makePlan(problem, { iterations: 0 });
    expect(kept.bookings).toEqual(first.plan.bookings);
    expect(kept.visits).toEqual(first.plan.visits);
    const again = planned(known, 2);
    const { changes } = outcomeOf(known, again.task, again.plan).notes;
    const worth = facts.settings.objective.perMovedFrame;
    if (kept.cost.total - again.plan.cost.total <= worth) expect(changes).toEqual([]);
  });

  it('begins no setup right before a stop, and leaves no train on a frame that is down', () => {
    const { task, plan } = planned(facts, 1);
    const running = new Set(task.problem.jobs.filter((job) => job.running).map(({ id }) => id));
    const busiest = plan.bookings
      .filter(({ jobId }) => !running.has(jobId))
      .reduce((a, b) => (b.endMin - b.setupStartMin > a.endMin - a.setupStartMin ? b : a));
    const down = {
      frameId: busiest.frameId,
      startMs: task.originMs + (busiest.startMin + 120) * MS_PER_MINUTE,
      endMs: task.originMs + (busiest.startMin + 360) * MS_PER_MINUTE,
    };
    const overlay = { down: [down], extraShifts: [], away: [] };
    const { problem } = problemOf(facts, matchJob, overlay);
    const changed = makePlan(problem, { iterations: ROUNDS, seed: 1 });
    expect(judgePlan(problem, changed)).toEqual([]);
    const [startMin, endMin] = [down.startMs, down.endMs].map((ms) => (ms - task.originMs) / MS_PER_MINUTE) as [
      number,
      number,
    ];
    const across = changed.bookings.filter(
      (one) => one.frameId === down.frameId && one.setupStartMin < endMin && startMin < one.endMin,
    );
    expect(across.filter(({ jobId }) => !running.has(jobId))).toEqual([]);
  });
});
