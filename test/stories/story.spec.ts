import { jest } from '@jest/globals';
import type { BenchView, JobView, PlanView, ReportView, RequestView, RigView } from '#libs/contract/src/index.js';
import { verifyRecord } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { startLab, TEST_TEAM } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { startRedis, withoutRedis } from '../support/redis.js';
import type { TestRedis } from '../support/redis.js';
import { until } from '../support/until.js';
import {
  addItem,
  addTechnician,
  benchLab,
  calibrate,
  check,
  FIRST,
  publishPlan,
  readyRequest,
  rig,
  trainTags,
} from './bench-lab.js';
import type { BenchLab } from './bench-lab.js';
import { CELL_5KN, FRAME_10KN } from './register-items.js';
import { eventsOf, refusal, REVIEWED, setUpLab } from './story-steps.js';
import { labClock } from '../support/lab-clock.js';

jest.setTimeout(120_000);

const PLANNED_WITHIN_MS = 30_000;

describe.each([
  ['PostgreSQL', null],
  ['Redis', withoutRedis()],
])('a request goes all the way to its report, queues on %s', (backend, missing) => {
  const step = maybe(missing);
  let bench: BenchLab;
  let auditor: Client;
  let redis: TestRedis | null = null;
  let request: RequestView;
  let job: JobView;
  let report: ReportView;

  beforeAll(async () => {
    redis = backend === 'Redis' ? await startRedis() : null;
    bench = await benchLab(await startLab(redis ? { redisUrl: redis.url } : {}));
    auditor = await bench.lab.signIn('auditor');
    await setUpLab(bench.manager);
  });
  afterAll(async () => {
    await bench?.lab.stop();
    await redis?.stop();
  });

  step('the requester hands it in', async () => {
    const draft = await bench.requester.post<RequestView>('/requests', {
      ...{ title: 'Rear carrier bracket', teamId: TEST_TEAM.id, batches: [bench.batch] },
      dueAt: new Date(labClock.nowMs() + 14 * 86_400_000).toISOString(),
    });
    expect(draft.body.state).toBe('draft');
    request = (await bench.requester.post<RequestView>(`/requests/${draft.body.id}/submit`)).body;
    expect(request).toMatchObject({ state: 'submitted', waitsFor: expect.stringContaining('review') });
    expect(await eventsOf(auditor, request.id)).toEqual(['request/drafted', 'request/submitted']);
  });

  step('the manager accepts it once every point of the review is settled', async () => {
    const accept = (review: object) => bench.manager.post<any>(`/requests/${request.id}/accept`, review);
    const open = await accept({ ...REVIEWED, specimensAgreed: false });
    expect([open.status, open.body.errors[0].field]).toEqual([422, 'specimensAgreed']);
    expect((await accept(REVIEWED)).body).toMatchObject({
      state: 'accepted',
      batches: [{ job: { state: 'waiting' } }],
    });
    expect((await eventsOf(auditor, request.id)).at(-1)).toBe('request/accepted');
  });

  step('its specimens come in, and its job is released', async () => {
    const { body } = await bench.manager.get<RequestView>(`/requests/${request.id}`);
    const specimenIds = body.batches[0]!.specimens.map(({ id }) => id);
    const here = await bench.technician.post<RequestView>(`/requests/${request.id}/arrivals`, { specimenIds });
    expect(here.body.batches[0]!.job).toMatchObject({ state: 'ready' });
    expect((await eventsOf(auditor, request.id)).at(-1)).toBe('request/specimens-arrived');
    request = here.body;
  });

  step('a plan with it is made by the worker and published', async () => {
    const jobId = request.batches[0]!.job!.id;
    const booked = await until(async () => {
      const { body } = await bench.manager.get<PlanView>('/plan');
      const bookings = body.lanes?.flatMap((lane) => lane.bookings) ?? [];
      return !body.stale && bookings.find((booking) => booking.jobId === jobId);
    }, PLANNED_WITHIN_MS);
    expect(booked.train.map(({ tag }) => tag).sort()).toEqual([FIRST.grips, FIRST.cell].sort());
    const promised = await bench.requester.get<RequestView>(`/requests/${request.id}`);
    expect(promised.body).toMatchObject({ promise50At: expect.any(String), promise80At: expect.any(String) });
  });

  step('the technician takes it', async () => {
    const { body } = await bench.technician.get<BenchView>('/bench');
    expect(body.next).toMatchObject({ jobId: request.batches[0]!.job!.id, frameTag: FIRST.frame });
    job = (await bench.technician.post<JobView>('/bench/take', {})).body;
    expect(job).toMatchObject({ state: 'taken', technician: { name: 'One technician' } });
    expect((await eventsOf(auditor, job.id)).at(-1)).toBe('job/taken');
  });

  step('is refused an item that is none of the train, and a cell whose calibration lapsed', async () => {
    await addItem(bench.manager, { ...FRAME_10KN, tag: 'UF-OTHER' });
    const lapsed = await addItem(bench.manager, { ...CELL_5KN, tag: 'LC-LAPSED' });
    await calibrate(bench.manager, lapsed, { daysAgo: 800 });
    const scan = (tag: string) => bench.technician.post<any>(`/jobs/${job.id}/confirm`, { tag });
    expect(refusal(await scan('NOT-OURS'))).toEqual([404, 'item/unknown']);
    expect(refusal(await scan('UF-OTHER'))).toEqual([409, 'bench/wrong-item']);
    const refused = await scan('LC-LAPSED');
    expect(refusal(refused)).toEqual([409, 'bench/wrong-item']);
    expect(refused.body.detail).toContain('LC-LAPSED cannot take the place of LC-5K-1');
    expect(refused.body.facts.rules).toContain('calibration-in-force');
    const standIn = { itemId: bench.items[FIRST.cell], tag: 'LC-LAPSED' };
    expect(refusal(await bench.technician.post(`/jobs/${job.id}/stand-in`, standIn))).toEqual([
      409,
      'bench/wrong-item',
    ]);
    expect((await bench.technician.get<JobView>(`/jobs/${job.id}`)).body).toMatchObject({
      state: 'taken',
      train: job.train,
    });
  });

  step('cannot start before the train is whole', async () => {
    expect(refusal(await bench.technician.post(`/jobs/${job.id}/start`, {}))[0]).toBe(409);
    job = await rig(bench.technician, job);
    expect(job.state).toBe('rigged');
    expect((await eventsOf(auditor, job.id)).slice(-2)).toEqual(['job/step-confirmed', 'job/rigged']);
  });

  step('is refused a start without shift check', async () => {
    for (const { key } of job.checks.filter(({ kind, done }) => kind === 'tick' && !done)) {
      await bench.technician.post(`/jobs/${job.id}/tick`, { key });
    }
    expect(refusal(await bench.technician.post(`/jobs/${job.id}/start`, {}))).toEqual([
      409,
      'bench/shift-check-needed',
    ]);
    job = await check(bench.technician, job);
    expect((await eventsOf(auditor, job.id)).at(-1)).toBe('job/shift-checked');
  });

  step('is refused a start on a cell whose calibration lapsed since it was fitted', async () => {
    const due = await cellDue(bench, new Date(labClock.nowMs() - 1_000));
    const refused = await bench.technician.post<any>(`/jobs/${job.id}/start`, {});
    expect(refusal(refused)).toEqual([409, 'bench/train-not-fit']);
    expect(refused.body.facts.problems.map(({ rule }: { rule: string }) => rule)).toContain('calibration-in-force');
    await cellDue(bench, due);
  });

  step('starts, and the request is in work', async () => {
    const started = await bench.technician.post<JobView>(`/jobs/${job.id}/start`, {});
    expect(started.body).toMatchObject({ state: 'running' });
    expect((await eventsOf(auditor, job.id)).at(-1)).toBe('job/running');
    expect((await bench.requester.get<RequestView>(`/requests/${request.id}`)).body.state).toBe('in-work');
    expect((await eventsOf(auditor, request.id)).at(-1)).toBe('request/in-work');
  });

  step('keeps results specimen by specimen, one of them invalid with its reason, and pauses meanwhile', async () => {
    const [first, second, third] = job.specimens;
    const at = (id: string) => `/jobs/${job.id}/specimens/${id}`;
    const dimensions = { widthMm: [10, 10.02, 9.98], thicknessMm: [4.01, 4, 3.99] };
    for (const [specimen, value] of [
      [first, 2.8],
      [second, 2.9],
    ] as const) {
      await bench.technician.put(`${at(specimen!.id)}/dimensions`, { dimensions });
      await bench.technician.post(`${at(specimen!.id)}/results`, {
        results: [{ key: 'peak-load', value, unit: 'kN' }],
      });
    }
    const paused = await bench.technician.post<JobView>(`/jobs/${job.id}/pause`, { why: 'Lunch' });
    expect(paused.body).toMatchObject({ state: 'paused', why: 'Lunch' });
    await bench.technician.post(`/jobs/${job.id}/resume`, {});
    const invalid = await bench.technician.post<JobView>(`${at(third!.id)}/invalid`, { why: 'Slipped in the grip' });
    expect(invalid.body.specimens.map(({ fate }) => fate)).toEqual(['tested', 'tested', 'invalid']);
    expect(await eventsOf(auditor, job.id)).toEqual(expect.arrayContaining(['job/paused', 'job/running']));
  });

  step('finishes it; the request is in review, what hangs on the frame is its rig', async () => {
    const conditions = { temperatureC: 23.1, humidityPct: 50 };
    const finished = await bench.technician.post<JobView>(`/jobs/${job.id}/finish`, { conditions });
    expect(finished.body).toMatchObject({ state: 'done', conditions });
    expect((await eventsOf(auditor, job.id)).at(-1)).toBe('job/done');
    expect((await eventsOf(auditor, request.id)).at(-1)).toBe('request/in-review');
    const rigs = (await bench.manager.get<RigView[]>('/rigs')).body;
    const here = rigs.find(({ frame }) => frame.tag === FIRST.frame)!;
    expect(here.links.map(({ tag }) => tag).sort()).toEqual([FIRST.grips, FIRST.cell].sort());
  });

  step('the report is issued by somebody else, with its file and number', async () => {
    const prepared = await bench.manager.post<ReportView>(`/requests/${request.id}/report`);
    expect([prepared.body.state, prepared.body.missing]).toEqual(['draft', []]);
    const { id, version } = prepared.body;
    const seen = { headers: { 'if-match': `"${version}"` } };
    expect((await bench.technician.post(`/reports/${id}/issue`, undefined, seen)).status).toBe(403);
    expect((await bench.manager.post(`/reports/${id}/issue`, undefined, seen)).status).toBe(202);
    report = await until(async () => {
      const { body } = await bench.manager.get<ReportView>(`/reports/${id}`);
      return body.state === 'issued' && body;
    }, PLANNED_WITHIN_MS);
    expect(report).toMatchObject({ number: `TR-${labClock.now().getUTCFullYear()}-0001`, hasFile: true });
    expect(report.document.batches[0]!.results.statistics.find(({ key }) => key === 'peak-stress')).toMatchObject({
      n: 2,
    });
    for (const { definition } of report.document.batches[0]!.results.columns) expect(definition).toMatch(/.{10}/);
    expect(await eventsOf(auditor, id)).toEqual(['report/prepared', 'report/authorised', 'report/issued']);
    expect((await bench.requester.get<RequestView>(`/requests/${request.id}`)).body.state).toBe('reported');
    expect((await eventsOf(auditor, request.id)).at(-1)).toBe('request/reported');
  });

  step('the requester reads it, anybody can verify it, and nobody changes it', async () => {
    const file = await bench.requester.fetch(`/reports/${report.id}/file.pdf`);
    expect(new TextDecoder().decode(new Uint8Array(await file.arrayBuffer()).slice(0, 5))).toBe('%PDF-');
    const verified = await bench.lab.visitor().get(`/verify/${report.number}?hash=${report.sha256}`);
    expect(verified.body).toMatchObject({ known: true, matches: true });
    const remark = { headers: { 'if-match': `"${report.version}"` } };
    expect((await bench.manager.patch(`/reports/${report.id}`, { opinions: 'Changed' }, remark)).status).toBe(409);
  });

  step('and the record of it all is one unbroken chain', async () => {
    // The worker may still be at work.
    expect((await bench.lab.acting.snapshot(verifyRecord)).faults).toEqual([]);
  });
});

/** As if the calibration of the cell in the train had been due then. @returns when it is due */
async function cellDue({ lab, items }: BenchLab, due: Date): Promise<Date> {
  const [row] = await lab.records.query<{ due_at: Date }[]>('select due_at from calibration where item_id = $1', [
    items[FIRST.cell],
  ]);
  await lab.records.query('update calibration set due_at = $2 where item_id = $1', [items[FIRST.cell], due]);
  return row!.due_at;
}

describe('when 50 clients ask for the next job at once', () => {
  const JOBS = 15;
  const TECHNICIANS = 25;
  let bench: BenchLab;

  beforeAll(async () => {
    bench = await benchLab(await startLab({ worker: false }), JOBS);
    await readyRequest(
      bench,
      'Fifteen lots',
      Array.from({ length: JOBS }, () => ({ ...bench.batch, specimenCount: 1 })),
    );
    await publishPlan(
      bench,
      Array.from({ length: JOBS }, (_, at) => trainTags(at + 1)),
    );
  });
  afterAll(() => bench?.lab.stop());

  it('each job is taken exactly once, and who gets none is told why', async () => {
    const technicians: Client[] = [];
    for (let at = 0; at < TECHNICIANS; at++) technicians.push(await addTechnician(bench.lab, `hand-${at}`));
    // Two clients each, as with a tablet and a bench PC: both show the same job.
    const clients = technicians.flatMap((client) => [client, client.at(bench.lab.baseUrl)]);
    const answers = await Promise.all(clients.map((client) => client.post<any>('/bench/take', {})));
    const taken = answers.filter(({ status }) => status === 200);
    expect(new Set(taken.map(({ body }) => body.id)).size).toBe(JOBS);
    const takers = taken.map(({ body }) => `${body.id} ${body.technician.id}`);
    expect([new Set(takers).size, taken.length]).toEqual([JOBS, 2 * JOBS]);
    const refused = answers.filter(({ status }) => status !== 200);
    expect(new Set(refused.map((answer) => refusal(answer).join(' ')))).toEqual(new Set(['409 bench/nothing-to-take']));
    const rows = await bench.lab.records.query<unknown[]>(`select 1 from record_event where kind = 'job/taken'`);
    expect(rows).toHaveLength(JOBS);
  });
});
