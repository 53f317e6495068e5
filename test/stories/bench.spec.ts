import { jest } from '@jest/globals';
import type { BenchView, JobView, RequestView } from '#libs/contract/src/index.js';
import { startLab } from '../support/lab.js';
import { benchLab, check, FIRST, publishPlan, readyRequest, rig } from './bench-lab.js';
import type { BenchLab } from './bench-lab.js';

jest.setTimeout(120_000);

let bench: BenchLab;
let request: RequestView;
let job: JobView;

beforeAll(async () => {
  bench = await benchLab(await startLab({ worker: false }));
  request = await readyRequest(bench);
  await publishPlan(bench);
});
afterAll(() => bench?.lab.stop());

describe('a technician at the bench', () => {
  it('takes the next job of the plan, and gets the same one on a second tap', async () => {
    const before = await bench.technician.get<BenchView>('/bench');
    expect(before.body).toMatchObject({
      mine: [],
      nothingWhy: null,
      next: { frameTag: FIRST.frame, requestReference: request.reference },
    });
    const taken = await bench.technician.post<JobView>('/bench/take', {});
    expect([taken.status, taken.body]).toEqual([200, expect.objectContaining({ state: 'taken' })]);
    job = taken.body;
    expect((await bench.technician.post<JobView>('/bench/take', {})).body.id).toBe(job.id);
    expect(job.setup.map(({ action, item }) => [action, item.tag])).toEqual([
      ['put-on', FIRST.cell],
      ['put-on', FIRST.grips],
    ]);
  });

  it('rigs it tag by tag', async () => {
    job = await rig(bench.technician, job);
    expect(job.state).toBe('rigged');
  });

  it('checks and starts it', async () => {
    job = await check(bench.technician, job);
    expect(job.checks.filter(({ done, required }) => required && !done)).toEqual([]);
    const started = await bench.technician.post<JobView>(`/jobs/${job.id}/start`, {});
    expect([started.status, started.body]).toEqual([200, expect.objectContaining({ state: 'running' })]);
  });

  it('types results, from which strength is computed, and finishes', async () => {
    for (const [at, { id }] of job.specimens.entries()) {
      const measured = await bench.technician.put(`/jobs/${job.id}/specimens/${id}/dimensions`, {
        dimensions: { widthMm: [10, 10.02, 9.98], thicknessMm: [4, 4, 4] },
      });
      expect(measured.status).toBe(200);
      const typed = await bench.technician.post<JobView>(`/jobs/${job.id}/specimens/${id}/results`, {
        results: [{ key: 'peak-load', value: 2.8 + at / 10, unit: 'kN' }],
      });
      expect([typed.status, typed.body]).toEqual([200, expect.objectContaining({ state: 'running' })]);
    }
    const view = (await bench.technician.get<JobView>(`/jobs/${job.id}`)).body;
    // 2.8 kN / (10 mm × 4 mm) = 70 MPa
    expect(view.specimens[0]!.results.map(({ key, value, origin }) => [key, value, origin])).toEqual([
      ['peak-load', 2800, 'typed'],
      ['peak-stress', expect.closeTo(70, 9), 'computed'],
    ]);
    const finished = await bench.technician.post<JobView>(`/jobs/${job.id}/finish`, {
      conditions: { temperatureC: 23.1, humidityPct: 50 },
    });
    expect([finished.status, finished.body]).toEqual([200, expect.objectContaining({ state: 'done' })]);
    expect((await bench.requester.get<RequestView>(`/requests/${request.id}`)).body.state).toBe('in-review');
  });
});
