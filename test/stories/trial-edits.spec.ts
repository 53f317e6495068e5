import { jest } from '@jest/globals';
import type {
  BookingView,
  ItemView,
  Page,
  PersonView,
  PlanView,
  TrialEdit,
  TrialView,
} from '#libs/contract/src/index.js';
import { DEMO_PASSWORD, TaskRunEntity } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { startWorker } from '#apps/worker/src/platform/start-worker.js';
import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { sequence } from '../support/sequence.js';
import { until } from '../support/until.js';
import { refusal, setUpLab } from './story-steps.js';
import { labClock } from '../support/lab-clock.js';

jest.setTimeout(300_000);

const EDITS = 1_000;
const EDITS_A_TRIAL = 40;
const SEED = 7;
const PLANNED_WITHIN_MS = 240_000;
const NOBODY = '00000000-0000-4000-8000-000000000000';

describe('1 000 changes tried on the plan of the demo lab', () => {
  let lab: Lab;
  let manager: Client;
  let plan: PlanView;
  let people: PersonView[];
  let items: ItemView[];
  const random = sequence(SEED);
  const counts = { accepted: 0, refused: 0, followed: 0, impossible: 0 };

  beforeAll(async () => {
    lab = await startLab({ filled: 'demo', worker: false });
    manager = await lab.signIn('ruth.calloway@northmoor.example', DEMO_PASSWORD);
    await setUpLab(manager, { planningSeconds: 0.2 });
    await manager.post('/plan/replan', {});
    await work();
    plan = (await manager.get<PlanView>('/plan')).body;
    people = (await manager.get<Page<PersonView>>('/people')).body.rows;
    items = (await manager.get<Page<ItemView>>('/items')).body.rows;
  });
  afterAll(() => lab?.stop());

  it('each refusal has its reasons, and what is accepted becomes a plan that the judge passes', async () => {
    const trials: string[] = [];
    for (let made = 0; made < EDITS; made++) {
      if (made % EDITS_A_TRIAL === 0)
        trials.push((await manager.post<TrialView>('/trials', { name: `Trial ${trials.length + 1}` })).body.id);
      await tryEdit(trials.at(-1)!);
    }
    await work();
    for (const id of trials) refuseImpossible((await manager.get<TrialView>(`/trials/${id}`)).body);
    console.info(`Seed ${SEED}: ${JSON.stringify(counts)}`);
    expect(counts.accepted + counts.refused).toBe(EDITS);
    expect(counts.accepted).toBeGreaterThan(EDITS / 4);
    expect(counts.refused).toBeGreaterThan(EDITS / 10);
  });

  it('one is published only when its plan follows from all its changes, on the lab as it is', async () => {
    const [first, second] = plan.lanes.flatMap(({ bookings }) => bookings).filter(({ state }) => state === 'ready');
    const trial = (await manager.post<TrialView>('/trials', { name: 'Without the first' })).body;
    const publish = () => manager.post<any>(`/trials/${trial.id}/publish`, {});
    const look = async () => (await manager.get<TrialView>(`/trials/${trial.id}`)).body;
    await work();
    expect(await look()).toMatchObject({ pending: false, stale: false });
    await manager.post(`/trials/${trial.id}/edits`, {
      kind: 'hold',
      jobId: first!.jobId,
      why: 'The material is doubted',
    });
    expect(await look()).toMatchObject({ pending: true });
    expect(refusal(await publish())).toEqual([409, 'trial/not-ready']);
    await work();
    expect((await manager.post('/plan/holds', { jobId: second!.jobId, why: 'So is this one' })).status).toBe(204);
    expect(await look()).toMatchObject({ pending: false, stale: true });
    expect(refusal(await publish())).toEqual([409, 'plan/stale-facts']);
    expect((await manager.post<TrialView>(`/trials/${trial.id}/replan`)).body).toMatchObject({ pending: true });
    await work();
    expect((await publish()).body).toMatchObject({ state: 'published', pending: false });
    const { body } = await manager.get<PlanView>('/plan');
    expect(body.held.map(({ jobId }) => jobId)).toEqual(expect.arrayContaining([first!.jobId, second!.jobId]));
    expect(body.version).toBeGreaterThan(plan.version);
  });

  async function tryEdit(trialId: string): Promise<void> {
    const edit = anyEdit();
    const { status, body } = await manager.post<any>(`/trials/${trialId}/edits`, edit);
    if (status === 201) {
      counts.accepted++;
      return;
    }
    counts.refused++;
    const reasons: string[] =
      status === 422 ? body.errors.map(({ sentence }: { sentence: string }) => sentence) : (body.facts?.reasons ?? []);
    expect([[409, 422].includes(status), edit, body, reasons.length > 0]).toEqual([true, edit, body, true]);
    expect(reasons.filter((reason) => reason.trim().length < 10)).toEqual([]);
  }

  /** Lets a worker do everything that was announced. A planner whose plan its own judge refuses fails its task. */
  async function work(): Promise<void> {
    const worker = await startWorker(
      { databaseUrl: lab.databaseUrl, publicUrl: 'http://localhost', lockMs: 30_000, log: 'quiet' },
      lab.acting,
    );
    await until(async () => {
      const open = await lab.records.manager.find(TaskRunEntity, {
        where: [{ state: 'waiting' }, { state: 'running' }],
      });
      return open.every(({ mergedInto }) => mergedInto !== null);
    }, PLANNED_WITHIN_MS);
    await worker.stop();
    const failed = await lab.records.manager.findBy(TaskRunEntity, { state: 'failed' });
    expect(failed.map(({ name, error }) => [name, error])).toEqual([]);
  }

  function pick<Value>(values: readonly Value[]): Value {
    return values[Math.floor(random() * values.length)]!;
  }

  function anyEdit(): Record<string, unknown> {
    const kind = pick<TrialEdit['kind']>([
      'move',
      'move',
      'move',
      'unpin',
      'hold',
      'unhold',
      'frame-down',
      'frame-down',
      'extra-shift',
      'extra-item',
      'technician-off',
      'weight',
    ]);
    const bookings = plan.lanes.flatMap((lane) => lane.bookings);
    const booking = pick(bookings);
    const jobId = random() < 0.03 ? NOBODY : booking.jobId!;
    const frameId = random() < 0.03 ? NOBODY : random() < 0.5 ? booking.frameId! : pick(plan.lanes).frame.id;
    const personId = pick(people).id;
    const startMs = Math.floor((labClock.nowMs() + (random() * 12 - 1) * 24 * MS_PER_HOUR) / 60_000) * 60_000;
    const startsAt = new Date(startMs).toISOString();
    const endsAt = new Date(startMs + (random() * 60 - 2) * MS_PER_HOUR).toISOString();
    const shiftEndsAt = new Date(startMs + (random() * 18 - 0.5) * MS_PER_HOUR).toISOString();
    const why = pick(['The drive is serviced', 'An audit', 'x']);
    const parts: Record<TrialEdit['kind'], object> = {
      ...{ move: { jobId, frameId, startsAt }, unpin: { jobId }, hold: { jobId, why }, unhold: { jobId } },
      ...{
        'frame-down': { frameId, startsAt, endsAt, why },
        'extra-shift': { frameId, personId, startsAt, endsAt: shiftEndsAt },
      },
      ...{ 'extra-item': { likeItemId: pick(items).id }, 'technician-off': { personId, startsAt, endsAt } },
      weight: { jobId, weight: Math.round(random() * 110) / 10 - 0.5 },
    };
    return { kind, ...parts[kind] };
  }

  function refuseImpossible(trial: TrialView): void {
    expect(trial.plan).not.toBeNull();
    const bookings = trial.plan!.lanes.flatMap(({ bookings: on }) => on);
    for (const lane of trial.plan!.lanes) refuseOverlaps(lane.bookings, `on ${lane.frame.tag}`);
    const uses = new Map<string, BookingView[]>();
    for (const booking of [...bookings, ...trial.plan!.visits]) {
      for (const { itemId } of booking.train) uses.set(itemId, [...(uses.get(itemId) ?? []), booking]);
    }
    for (const [itemId, of] of uses) refuseOverlaps(of, `of ${itemId}`);
    for (const [index, edit] of trial.edits.entries()) refuseBroken(trial, edit, index, bookings);
  }

  function refuseOverlaps(bookings: readonly BookingView[], where: string): void {
    const inOrder = [...bookings].sort((a, b) => a.setupAt.localeCompare(b.setupAt));
    const clashes = inOrder.filter(({ setupAt }, at) => at > 0 && setupAt < inOrder[at - 1]!.endsAt);
    expect([where, clashes]).toEqual([where, []]);
  }

  /** Nothing begins or ends while a frame is down; a move is followed, or told to be refused with its reasons; what is held has no place. */
  function refuseBroken(trial: TrialView, edit: TrialEdit, index: number, bookings: readonly BookingView[]): void {
    const refused = trial.refused.find((one) => one.edit === index);
    if (refused) counts.impossible++;
    if (refused) expect(refused.reasons.length).toBeGreaterThan(0);
    const later = trial.edits
      .slice(index + 1)
      .filter((other) => 'jobId' in edit && 'jobId' in other && other.jobId === edit.jobId);
    if (edit.kind === 'frame-down') {
      const during = bookings.filter(
        ({ frameId, state, setupAt, endsAt }) =>
          frameId === edit.frameId &&
          !ON_A_FRAME.includes(String(state)) &&
          ((setupAt >= edit.startsAt && setupAt < edit.endsAt) || (endsAt > edit.startsAt && endsAt <= edit.endsAt)),
      );
      expect([edit, during]).toEqual([edit, []]);
    }
    const steered = later.some(({ kind }) => ['move', 'unpin', 'hold', 'unhold'].includes(kind));
    if (edit.kind === 'hold' && !steered) expect(bookings.filter(({ jobId }) => jobId === edit.jobId)).toEqual([]);
    if (edit.kind === 'move' && !steered && !refused) {
      counts.followed++;
      const found = bookings.find(({ jobId }) => jobId === edit.jobId);
      expect([edit, found?.frameId]).toEqual([edit, edit.frameId]);
    }
  }
});

const ON_A_FRAME = ['taken', 'rigged', 'running', 'paused'];
