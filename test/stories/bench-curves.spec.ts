import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { jest } from '@jest/globals';
import type {
  BatchResults,
  CurveProposalView,
  CurveView,
  HistoryView,
  JobView,
  ReportView,
} from '#libs/contract/src/index.js';
import { projectRoot } from '../support/maybe.js';
import { startLab } from '../support/lab.js';
import { until } from '../support/until.js';
import { benchLab, check, publishPlan, readyRequest, rig } from './bench-lab.js';
import type { BenchLab } from './bench-lab.js';

jest.setTimeout(180_000);

const CURVES = join(projectRoot(), 'test/curves');
/** A torque curve is right, and says nothing about a tension test. */
const TORQUE = 'exponents-and-carriage-returns-only.tsv';
const OK = readdirSync(join(CURVES, 'ok'))
  .filter((name) => name !== TORQUE)
  .sort();
const LINE_5 = 'letter-in-a-number-on-line-5.csv';
/** One more than the files that are right, for what goes wrong. */
const SPECIMENS = OK.length + 1;

let bench: BenchLab;
let job: JobView;

beforeAll(async () => {
  bench = await benchLab(await startLab());
  const ask = { ...bench.batch.ask, results: ['modulus', 'peak-stress', 'strain-at-break'] };
  await readyRequest(bench, 'Curves', [{ ...bench.batch, ask, specimenCount: SPECIMENS }]);
  await publishPlan(bench);
  job = (await bench.technician.post<JobView>('/bench/take', {})).body;
  job = await check(bench.technician, await rig(bench.technician, job));
  job = (await bench.technician.post<JobView>(`/jobs/${job.id}/start`, {})).body;
  expect(job.state).toBe('running');
});
afterAll(() => bench?.lab.stop());

const fileAt = (name: string, kind: 'ok' | 'not-ok' = 'ok') => readFileSync(join(CURVES, kind, name));
const pathOf = (specimenId: string) => `/jobs/${job.id}/specimens/${specimenId}/curve`;
const view = async () => (await bench.technician.get<JobView>(`/jobs/${job.id}`)).body;

async function upload(specimenId: string, name: string, content: Buffer): Promise<CurveProposalView> {
  const { status, body } = await bench.technician.post<CurveProposalView>(
    `${pathOf(specimenId)}?name=${name}`,
    content,
  );
  expect([name, status, body]).toEqual([name, 200, expect.objectContaining({ fileId: expect.any(String) })]);
  return body;
}

/** The specimen once its curve was read, or could not be. */
function settled(specimenId: string): Promise<JobView['specimens'][number]> {
  return until(async () => {
    const specimen = (await view()).specimens.find(({ id }) => id === specimenId)!;
    return (specimen.curve !== null && specimen.reading === null) || specimen.reading?.state === 'failed'
      ? specimen
      : null;
  }, 30_000);
}

describe('a recorded curve', () => {
  it('is kept byte for byte, confirmed once, and reduced to results: every file that is right', async () => {
    for (const [at, name] of OK.entries()) {
      const { id } = job.specimens[at]!;
      const content = fileAt(name);
      const { fileId, known, format } = await upload(id, name, content);
      if (!known)
        expect([name, await bench.technician.post(`${pathOf(id)}/confirm`, { fileId, format })]).toEqual([
          name,
          expect.objectContaining({ status: 200 }),
        ]);
      const { curve, reading, fate, results } = await settled(id);
      expect([name, reading, fate]).toEqual([name, null, 'tested']);
      const drawn = (await bench.requester.get<CurveView>(`/curves/${curve!.id}`)).body;
      expect([drawn.fileName, drawn.sha256]).toEqual([name, createHash('sha256').update(content).digest('hex')]);
      expect(drawn.rows).toBe(curve!.rows);
      expect(Math.max(...Object.values(drawn.points).map(({ length }) => length))).toBeLessThanOrEqual(2_000);
      const raw = await bench.technician.fetch(`/files/${fileId}`);
      expect(Buffer.from(await raw.arrayBuffer()).equals(content)).toBe(true);
      expect([name, results.map(({ origin }) => origin)]).toEqual([name, results.map(() => 'reduced')]);
      expect(results.find(({ key }) => key === 'peak-load')).toBeDefined();
    }
  });

  // Closed form: σ = E₀ε − Bε², E₀ = 2500 MPa, B = 80000 MPa; the chord of ISO 527-1 from 0.05 % to 0.25 % is 2260 MPa.
  it('gives the modulus of the closed form, with the points that it rests on', async () => {
    const specimen = (await view()).specimens[OK.indexOf('bending-from-the-start.csv')]!;
    const modulus = specimen.results.find(({ key }) => key === 'modulus')!;
    // The toe compensation of the method moves zero by 0.002 %, and with it the bounds: 0.2 % of the modulus.
    expect(modulus.value / 2260).toBeCloseTo(1, 2);
    expect((modulus.basis['at'] as { strain: number }[]).map(({ strain }) => strain)).toEqual([
      expect.closeTo(0.0005, 3),
      expect.closeTo(0.0025, 3),
    ]);
    const drawn = (await bench.technician.get<CurveView>(`/curves/${specimen.curve!.id}`)).body;
    expect(drawn.marks.map(({ key }) => key)).toContain('modulus');
  });

  it('of a known source is read at once, and the same file again changes nothing', async () => {
    const at = OK.indexOf('ramberg-osgood.csv');
    const { id } = job.specimens[at]!;
    const before = (await view()).specimens[at]!;
    const again = await upload(id, 'ramberg-osgood.csv', fileAt('ramberg-osgood.csv'));
    expect([again.known, again.problems]).toEqual([true, []]);
    await settled(id);
    const after = (await view()).specimens[at]!;
    expect([after.curve, after.results]).toEqual([before.curve, before.results]);
  });

  it('that is refused says line and reason, and leaves nothing but its file', async () => {
    const { id } = job.specimens.at(-1)!;
    const { fileId, format } = await upload(id, LINE_5, fileAt(LINE_5, 'not-ok'));
    await bench.technician.post(`${pathOf(id)}/confirm`, { fileId, format });
    const { reading, curve, results, fate } = await settled(id);
    expect(reading).toMatchObject({ state: 'failed', message: expect.stringMatching(/Line 5, column 2/) });
    expect([curve, results, fate]).toEqual([null, [], 'arrived']);
    const task = await bench.technician.get<any>(`/tasks/${reading!.taskId}`);
    expect(task.body).toMatchObject({ state: 'failed', error: reading!.message });
    const kept = await bench.technician.fetch(`/files/${fileId}`);
    expect(kept.status).toBe(200);
  });

  it('that holds nothing for this test says what it lacks', async () => {
    const { id } = job.specimens.at(-1)!;
    const { fileId, format } = await upload(id, TORQUE, fileAt(TORQUE));
    await bench.technician.post(`${pathOf(id)}/confirm`, { fileId, format });
    const { reading } = await until(async () => {
      const specimen = await settled(id);
      return specimen.reading?.message.includes(TORQUE) ? specimen : null;
    });
    expect(reading!.message).toContain('no load column');
  });

  it('is refused before it is kept when there is nothing in it, and a format by the part that is wrong', async () => {
    const { id } = job.specimens.at(-1)!;
    const empty = await bench.technician.post<any>(`${pathOf(id)}?name=empty.csv`, Buffer.from('\u0000\u0001'));
    expect([empty.status, empty.body.errors[0].field]).toEqual([422, 'body']);
    const { fileId, format } = await upload(id, LINE_5, fileAt(LINE_5, 'not-ok'));
    const bad = { ...format, delimiter: 'banana', columns: [{ heading: 'x', channel: 'forceN', unit: 'mm' }] };
    const first = await bench.technician.post<any>(`${pathOf(id)}/confirm`, { fileId, format: bad });
    expect([first.status, first.body.errors[0].field]).toEqual([422, 'format.delimiter']);
    const second = await bench.technician.post<any>(`${pathOf(id)}/confirm`, {
      fileId,
      format: { ...bad, delimiter: 'comma' },
    });
    expect(second.body.errors[0].field).toBe('format.columns[0].unit');
    const foreign = await bench.manager.post<any>(`${pathOf(id)}/confirm`, { fileId, format });
    expect(foreign.status).toBe(409);
  });

  it('is reduced again when the lengths are measured later', async () => {
    const at = OK.indexOf('aligned-by-spaces-inch-pounds.txt');
    const { id } = job.specimens[at]!;
    const stress = (specimen: JobView['specimens'][number]) =>
      specimen.results.find(({ key }) => key === 'peak-stress')!;
    const before = stress((await view()).specimens[at]!);
    // Nominal 10 mm × 4 mm; measured 10 mm × 5 mm: four fifths of the stress.
    await bench.technician.put(`/jobs/${job.id}/specimens/${id}/dimensions`, {
      dimensions: { widthMm: [10], thicknessMm: [5] },
    });
    const after = await until(async () => {
      const now = stress((await view()).specimens[at]!);
      return now.revision > before.revision ? now : null;
    });
    expect(after.value).toBeCloseTo((before.value * 4) / 5, 6);
  });

  it('joins the results of its request, and their history', async () => {
    await bench.technician.post(`/jobs/${job.id}/specimens/${job.specimens.at(-1)!.id}/invalid`, {
      why: 'The recording was lost',
    });
    const done = await bench.technician.post<JobView>(`/jobs/${job.id}/finish`, {
      conditions: { temperatureC: 23, humidityPct: 50 },
    });
    expect(done.body.state).toBe('done');
    const [found] = (await bench.requester.get<BatchResults[]>(`/requests/${job.request.id}/results`)).body;
    const strength = found!.statistics.find(({ key }) => key === 'peak-stress')!;
    // Twenty specimens: their scatter has 19 degrees of freedom; t at 95.45 % and 19 is 2.1405 (GUM, layout of table G.2).
    const { uncertainty } = strength;
    expect([strength.n, uncertainty?.degreesOfFreedom, found!.rows.length]).toEqual([OK.length, 19, SPECIMENS]);
    expect(uncertainty?.k).toBeCloseTo(2.1405, 4);
    const history = await bench.technician.get<HistoryView>(
      '/results/history?method=iso-527-2&material=pa6-gf30&key=peak-stress',
    );
    expect(history.body).toMatchObject({
      unit: 'MPa',
      chart: null,
      points: [
        { jobReference: job.reference, cellTag: 'LC-5K-1', n: OK.length, mean: expect.closeTo(strength.mean, 9) },
      ],
    });
    expect((await bench.requester.get('/results/history?method=iso-527-2&key=peak-stress')).status).toBe(403);
    expect((await bench.technician.get<any>('/results/history?key=peak-stress')).body.errors[0].field).toBe('method');
  });

  it('stands in the report as stress over strain, by the sizes that its results were read with', async () => {
    const report = await bench.manager.post<ReportView>(`/requests/${job.request.id}/report`);
    const { curves, stressStrain = [], results, specimens } = report.body.document.batches[0]!;
    expect(curves).toHaveLength(OK.length);
    expect(stressStrain.length).toBeGreaterThan(OK.length / 2);
    for (const { specimenLabel, points, marks } of stressStrain) {
      const strength = results.rows.find(({ label }) => label === specimenLabel)!.values['peak-stress']!.value;
      // A curve in print is thinned, and keeps its peak; seven digits of each point are kept.
      expect(Math.max(...points['stressMPa']!) / strength).toBeCloseTo(1, 6);
      expect(marks.find(({ key }) => key === 'peak-stress')!.y).toBeCloseTo(strength, 9);
    }
    const measured = specimens[OK.indexOf('aligned-by-spaces-inch-pounds.txt')]!;
    expect(measured.sizes?.map(({ label, mean, unit }) => [label, mean, unit])).toEqual([
      ['Width', '10', 'mm'],
      ['Thickness', '5', 'mm'],
    ]);
  });
});
