import { jest } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import type { JobView, PlanView, ReportView, RequestView } from '#libs/contract/src/index.js';
import { snapshot, verifyRecord } from '#libs/records/src/index.js';
import { Client } from '../support/client.js';
import type { Answer } from '../support/client.js';
import { fillWithPeople, TEST_PASSWORD, TEST_TEAM } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { startSolo } from '../support/solo.js';
import type { Solo } from '../support/solo.js';
import { until } from '../support/until.js';
import { benchLab } from './bench-lab.js';
import type { BenchLab } from './bench-lab.js';
import { REVIEWED, setUpLab } from './story-steps.js';

jest.setTimeout(300_000);

/** A task whose worker was killed is taken up again when its lock has run out: half a minute. */
const TASKS_WITHIN_MS = 120_000;
const DONE_ALREADY = '/problems/idempotency-key/done-already';

describe('a lab in one process that is killed again and again during the story', () => {
  let solo: Solo;
  let bench: BenchLab;
  let kills = 0;

  beforeAll(async () => {
    solo = await startSolo(fillWithPeople);
    const signIn = async (who: string) => {
      const client = new Client(solo.baseUrl);
      await client.signIn(`${who}@northmoor.example`, TEST_PASSWORD);
      return client;
    };
    bench = await benchLab({ ...solo, signIn } as unknown as Lab);
    await setUpLab(bench.manager);
  });
  afterAll(() => solo?.stop());

  /** Asks until there is an answer, with one key for all tries, and kills the lab some time after the first. */
  async function despite<Body>(
    kill: { afterMs: number; power?: boolean },
    client: Client,
    path: string,
    body?: unknown,
    headers = {},
  ): Promise<Answer<Body> | null> {
    const key = { headers: { 'idempotency-key': randomUUID(), ...headers } };
    const first = client.post<Body>(path, body, key).catch(() => null);
    await pause(kill.afterMs);
    await solo.kill({ power: kill.power ?? false });
    kills++;
    const early = await first;
    await solo.start();
    if (early && early.status < 300) return early;
    const again = await until(async () => {
      const answer = await client.post<any>(path, body, key).catch(() => null);
      return answer && !String(answer.body?.type).endsWith('/at-work') && answer;
    });
    if (again.body?.type === DONE_ALREADY) return null;
    expect([path, again.status, again.body?.detail]).toEqual([path, expect.any(Number), undefined]);
    return again;
  }

  it('loses nothing that was acknowledged, and does nothing twice', async () => {
    const { requester, manager, technician } = bench;
    const draft = { title: 'Bracket strength', teamId: TEST_TEAM.id, batches: [{ ...bench.batch, specimenCount: 2 }] };
    const { id } = (await requester.post<RequestView>('/requests', draft)).body;
    const request = async () => (await requester.get<RequestView>(`/requests/${id}`)).body;

    await despite({ afterMs: 15 }, requester, `/requests/${id}/submit`);
    expect((await request()).state).toBe('submitted');
    await despite({ afterMs: 40 }, manager, `/requests/${id}/accept`, REVIEWED);
    expect((await request()).state).toBe('accepted');
    const specimenIds = (await request()).batches[0]!.specimens.map((specimen) => specimen.id);
    await despite({ afterMs: 25 }, manager, `/requests/${id}/arrivals`, { specimenIds });
    const jobId = (await request()).batches[0]!.job!.id;
    await until(async () => {
      const { body } = await manager.get<PlanView>('/plan');
      return body.lanes?.some(({ bookings }) => bookings.some((booking) => booking.jobId === jobId));
    }, TASKS_WITHIN_MS);

    await despite({ afterMs: 60 }, technician, '/bench/take', {});
    const job = async () => (await technician.get<JobView>(`/jobs/${jobId}`)).body;
    expect((await job()).state).toBe('taken');
    for (const [at, { item }] of (await job()).setup.entries()) {
      const confirm = [technician, `/jobs/${jobId}/confirm`, { tag: item.tag }] as const;
      await (at === 0 ? confirm[0].post(confirm[1], confirm[2]) : despite({ afterMs: 30 }, ...confirm));
    }
    expect((await job()).state).toBe('rigged');
    const cellId = (await job()).train.find(({ role }) => role === 'load-cell')!.itemId;
    await technician.post(`/jobs/${jobId}/shift-check`, { cellId, reference: 1, reading: 1, unit: 'kN' });
    for (const { key } of (await job()).checks.filter(({ kind, done }) => kind === 'tick' && !done))
      await technician.post(`/jobs/${jobId}/tick`, { key });
    await technician.post(`/jobs/${jobId}/start`, {});

    for (const [at, specimenId] of specimenIds.entries()) {
      await technician.put(`/jobs/${jobId}/specimens/${specimenId}/dimensions`, {
        dimensions: { widthMm: [10, 10, 10], thicknessMm: [4, 4, 4] },
      });
      const results = { results: [{ key: 'peak-load', value: 2.8 + at / 10, unit: 'kN' }] };
      const path = `/jobs/${jobId}/specimens/${specimenId}/results`;
      await (at === 0 ? despite({ afterMs: 20 }, technician, path, results) : technician.post(path, results));
    }
    await despite({ afterMs: 30, power: true }, technician, `/jobs/${jobId}/finish`, {
      conditions: { temperatureC: 23, humidityPct: 50 },
    });
    expect([(await job()).state, (await request()).state]).toEqual(['done', 'in-review']);
    expect((await job()).specimens.map(({ results }) => results.find(({ key }) => key === 'peak-load')?.value)).toEqual(
      [2800, 2900],
    );

    const report = (await manager.post<ReportView>(`/requests/${id}/report`)).body;
    await despite({ afterMs: 120 }, manager, `/reports/${report.id}/issue`, undefined, {
      'if-match': `"${report.version}"`,
    });
    await until(
      async () => (await manager.get<ReportView>(`/reports/${report.id}`)).body.state === 'issued',
      TASKS_WITHIN_MS,
    );
    expect((await request()).state).toBe('reported');
    expect((await manager.get<ReportView>(`/reports/${report.id}`)).body.number).toMatch(/^TR-\d{4}-0001$/);
    expect(kills).toBe(8);
    await refuseRepeated(jobId, id, report.id);
  });

  /** Everything that happened is in the record once; each of the two specimens was measured and tested once. */
  async function refuseRepeated(...subjects: string[]) {
    const rows = await solo.records.query<{ kind: string; count: number }[]>(
      `select kind, count(*)::int as count from record_event where subject_id = any($1) group by kind`,
      [subjects],
    );
    const counts = Object.fromEntries(rows.map(({ kind, count }) => [kind, count]));
    for (const kind of ONCE) expect([kind, counts[kind]]).toEqual([kind, 1]);
    expect(counts).toMatchObject({ 'specimen/measured': 2, 'results/entered': 2 });
    expect((await snapshot({ source: solo.records }, verifyRecord)).faults).toEqual([]);
  }
});

const ONCE = ['submitted', 'accepted', 'specimens-arrived', 'in-work', 'in-review', 'reported']
  .map((act) => `request/${act}`)
  .concat(['taken', 'rigged', 'shift-checked', 'running', 'done'].map((act) => `job/${act}`))
  .concat(['prepared', 'authorised', 'issued'].map((act) => `report/${act}`));
