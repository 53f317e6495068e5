import { jest } from '@jest/globals';
import type { JobView, Problem } from '#libs/contract/src/index.js';
import { resultsOfRequest } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
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
} from './bench-lab.js';
import type { BenchLab } from './bench-lab.js';
import { CELL_5KN } from './register-items.js';
import { labClock } from '../support/lab-clock.js';

jest.setTimeout(120_000);

let bench: BenchLab;
let technician: Client;
let job: JobView;

beforeAll(async () => {
  bench = await benchLab(await startLab({ worker: false }));
  technician = bench.technician;
  const { manager, items } = bench;
  const small = { ...CELL_5KN.details, capacityN: 50 };
  await addItem(manager, { ...CELL_5KN, tag: 'LC-50N', name: 'Load cell 50 N', details: small });
  items['LC-5K-9'] = await addItem(manager, { ...CELL_5KN, tag: 'LC-5K-9' });
  await calibrate(manager, items['LC-5K-9']);
  await readyRequest(bench);
  await publishPlan(bench);
  job = (await technician.post<JobView>('/bench/take', {})).body;
});
afterAll(() => bench?.lab.stop());

/** Status, code and facts of a refusal. */
async function refused(
  answer: Promise<{ status: number; body: unknown }>,
): Promise<[number, string, string, Record<string, any>]> {
  const { status, body } = await answer;
  const { type, detail, facts } = body as Problem;
  return [status, type.replace('/problems/', ''), detail, facts ?? {}];
}
const send = (path: string, body: object = {}, by = technician) => by.post<any>(`/jobs/${job.id}${path}`, body);
const measure = (id: string) =>
  technician.put(`/jobs/${job.id}/specimens/${id}/dimensions`, { dimensions: { widthMm: [10], thicknessMm: [4] } });
const sql = (text: string, values: unknown[] = []) => bench.lab.records.query(text, values);

describe('an item that is not the one', () => {
  it('is refused by the tag when nobody knows it', async () => {
    const [status, code, sentence] = await refused(send('/confirm', { tag: 'LC-NOPE' }));
    expect([status, code]).toEqual([404, 'item/unknown']);
    expect(sentence).toContain('LC-NOPE');
  });

  it('is refused with the rule that it breaks, what was found and what is allowed', async () => {
    const [status, code, sentence, facts] = await refused(send('/confirm', { tag: 'lc-50n' }));
    expect([status, code, facts['found'], facts['allowed']]).toEqual([
      409,
      'bench/wrong-item',
      'LC-50N',
      [FIRST.cell, FIRST.grips],
    ]);
    expect(facts['rules']).toEqual(expect.arrayContaining(['cell-capacity', 'calibration-in-force']));
    // 90 MPa × 40 mm² = 3600 N, with its margin of 20 % 4320 N, and grips of 1.2 kg: 1.2 kg × 9.80665 m/s² = 12 N.
    expect(sentence).toMatch(/4332\sN/);
  });

  it('is harmless when it is the frame', async () => {
    const { status, body } = await send('/confirm', { tag: FIRST.frame });
    expect([status, body.state, body.setup.filter(({ confirmed }: { confirmed: boolean }) => confirmed)]).toEqual([
      200,
      'taken',
      [],
    ]);
  });

  it('may be an equal unit: the sheet names it, and it stands in after the rules ran again', async () => {
    const offered = job.setup.find(({ item }) => item.tag === FIRST.cell)!;
    expect(offered.standIns.map(({ tag }) => tag)).toEqual(['LC-5K-9']);
    const [, code, sentence, facts] = await refused(send('/confirm', { tag: 'LC-5K-9' }));
    expect([code, facts['standInFor']]).toEqual(['bench/wrong-item', bench.items[FIRST.cell]]);
    expect(sentence).toContain('equal unit');
    const stood = await send('/stand-in', { itemId: bench.items[FIRST.cell], tag: 'LC-5K-9' });
    expect(stood.body.train.map(({ tag }: { tag: string }) => tag)).toContain('LC-5K-9');
    const [status, again] = await refused(send('/stand-in', { itemId: bench.items[FIRST.grips], tag: 'LC-50N' }));
    expect([status, again]).toEqual([409, 'bench/wrong-item']);
  });

  it('is put back by giving the job back: what was fitted stays on the frame', async () => {
    const given = await send('/give-back', { why: 'The planned cell is back' });
    expect([given.status, given.body.state, given.body.technician]).toEqual([200, 'ready', null]);
    const rigs = await technician.get<any>('/rigs');
    expect(JSON.stringify(rigs.body)).toContain('LC-5K-9');
    job = (await technician.post<JobView>('/bench/take', {})).body;
    expect(job.setup.map(({ action, item }) => [action, item.tag])).toEqual([
      ['take-off', 'LC-5K-9'],
      ['put-on', FIRST.cell],
      ['put-on', FIRST.grips],
    ]);
  });
});

describe('a start', () => {
  it('is refused while links are not confirmed, with the state and the ways out of it', async () => {
    const [status, code, , facts] = await refused(send('/start'));
    expect([status, code, facts['state'], facts['waysOut']]).toEqual([
      409,
      'job/move-not-allowed',
      'taken',
      expect.arrayContaining(['rig', 'give-back', 'block']),
    ]);
  });

  it('is refused without a shift check', async () => {
    job = await rig(technician, job);
    expect(job.state).toBe('rigged');
    const [status, code, sentence, facts] = await refused(send('/start'));
    expect([status, code, facts['reason']]).toEqual([409, 'bench/shift-check-needed', 'never-checked']);
    expect(sentence).toContain(FIRST.cell);
  });

  it('is refused while checks are open, with their list', async () => {
    const passed = await send('/shift-check', {
      cellId: bench.items[FIRST.cell],
      reference: 1000,
      reading: 1009.9,
      unit: 'N',
    });
    expect(passed.body.checks[0]).toMatchObject({ key: 'shift-check', done: true });
    const [status, code, , facts] = await refused(send('/start'));
    expect([status, code]).toEqual([409, 'bench/checks-missing']);
    expect(facts['missing'].map(({ key }: { key: string }) => key)).toEqual([
      'limit-stops',
      'guard',
      'emergency-stop',
      'warm-up',
      'channels',
      'faces',
      'zero',
    ]);
  });

  it('is refused to somebody else, and to somebody whose authorisation has ended', async () => {
    job = await check(technician, job);
    const other = await addTechnician(bench.lab, 'tess.marl');
    expect((await refused(send('/start', {}, other))).slice(0, 2)).toEqual([409, 'bench/not-yours']);
    await sql(
      `update authorisation set to_at = $1 where person_id = (select id from person where email = 'technician@northmoor.example')`,
      [labClock.now()],
    );
    expect((await refused(send('/start'))).slice(0, 2)).toEqual([409, 'bench/not-authorised']);
    await sql(`update authorisation set to_at = null`);
  });

  it('is refused on a cell whose calibration has lapsed, or lapses within the run', async () => {
    const dueIn = (text: string) =>
      sql(`update calibration set due_at = $2::timestamptz + $3::interval where item_id = $1`, [
        ...[bench.items[FIRST.cell], labClock.now(), text],
      ]);
    for (const due of ['-1 minute', '10 minutes']) {
      await dueIn(due);
      const [status, code, sentence, facts] = await refused(send('/start'));
      expect([status, code, facts['problems'][0].rule]).toEqual([409, 'bench/train-not-fit', 'calibration-in-force']);
      expect(sentence).toMatch(/lapse/);
    }
    await dueIn('1 year');
  });

  it('is refused on a cell found of class 2 since it was confirmed; the sheet says so at once', async () => {
    const cellId = bench.items[FIRST.cell]!;
    const line = async () =>
      (await technician.get<JobView>(`/jobs/${job.id}`)).body.setup.find(({ item }) => item.itemId === cellId)!;
    expect(await line()).toMatchObject({ confirmed: true, problem: null });
    await calibrate(bench.manager, cellId, { daysAgo: 0, className: '2' });
    expect(await line()).toMatchObject({ confirmed: false, problem: expect.stringMatching(/LC-5K-1.*class/) });
    expect((await refused(send('/confirm', { tag: FIRST.cell }))).slice(0, 2)).toEqual([409, 'bench/train-not-fit']);
    expect((await refused(send('/start'))).slice(0, 2)).toEqual([409, 'bench/train-not-fit']);
    await calibrate(bench.manager, cellId, { daysAgo: 0, className: '0.5' });
    expect(await line()).toMatchObject({ confirmed: true, problem: null });
  });

  it('is refused on an item with an open fault', async () => {
    const fault = await technician.post<any>(`/items/${bench.items[FIRST.grips]}/faults`, { what: 'Jaw cracked' });
    expect(fault.status).toBeLessThan(300);
    expect((await refused(send('/start'))).slice(0, 2)).toEqual([409, 'bench/train-not-fit']);
    await sql('update fault set closed_at = $1', [labClock.now()]);
  });

  it('is refused on an item that is promised elsewhere before the run would end', async () => {
    const span = (fromMin: number) => ({
      ...{ kind: 'held', why: 'Lent to the other bay' },
      startsAt: new Date(labClock.nowMs() + fromMin * 60_000).toISOString(),
      endsAt: new Date(labClock.nowMs() + (fromMin + 60) * 60_000).toISOString(),
    });
    // Three specimens of 8 min each: a promise in 20 min is in the way, one in 30 min is not.
    for (const [fromMin, held] of [
      [30, false],
      [20, true],
    ] as const) {
      expect(
        (await bench.manager.post(`/items/${bench.items[FIRST.grips]}/windows`, span(fromMin))).status,
      ).toBeLessThan(300);
      const sentences = (await technician.get<JobView>(`/jobs/${job.id}`)).body.checks.find(
        ({ key }) => key === 'train-fit',
      )!.problem;
      expect(sentences?.includes('promised elsewhere') ?? false).toBe(held);
    }
    expect((await refused(send('/start'))).slice(0, 2)).toEqual([409, 'bench/train-not-fit']);
    await sql('delete from item_window');
  });

  it('happens when nothing is in the way, and twice does nothing more', async () => {
    const [first, second] = await Promise.all([send('/start'), send('/start')]);
    expect([first.status, second.status, second.body.state, second.body.startedAt]).toEqual([
      200,
      200,
      'running',
      first.body.startedAt,
    ]);
    const events = await sql(`select kind from record_event where subject_id = $1 and kind = 'job/running'`, [job.id]);
    expect(events).toHaveLength(1);
  });
});

describe('a run', () => {
  it('cannot be finished while specimens are open, and names them', async () => {
    const [status, code, , facts] = await refused(send('/finish', { conditions: {} }));
    expect([status, code, facts['open']]).toEqual([
      409,
      'bench/specimens-open',
      job.specimens.map(({ label }) => label),
    ]);
  });

  it('refuses figures by field, with limit and unit', async () => {
    const at = `/specimens/${job.specimens[0]!.id}`;
    const put = await technician.put<{ errors: { field: string; unit?: string }[] }>(
      `/jobs/${job.id}${at}/dimensions`,
      {
        dimensions: { widthMm: [10, -1], colour: [1] },
      },
    );
    expect([put.status, put.body.errors.map(({ field, unit }) => [field, unit])]).toEqual([
      422,
      [
        ['dimensions.widthMm[1]', 'mm'],
        ['dimensions.colour', undefined],
      ],
    ]);
    const heavy = await send(`${at}/results`, { results: [{ key: 'peak-load', value: 5.001, unit: 'kN' }] });
    expect([heavy.status, heavy.body.errors[0]]).toEqual([
      422,
      expect.objectContaining({
        field: 'results[0].value',
        unit: 'kN',
        allowed: expect.stringContaining('at most 5'),
      }),
    ]);
    const odd = await send(`${at}/results`, {
      results: [
        { key: 'peak-load', value: 1, unit: 'bananas' },
        { key: 'peak-stress', value: 1, unit: 'MPa' },
      ],
    });
    expect(odd.body.errors.map(({ field }: any) => field)).toEqual(['results[0].unit', 'results[1].key']);
    const check_ = await send('/tick', { key: 'make-tea' });
    expect([check_.status, check_.body.facts?.state]).toEqual([409, 'running']);
    for (const path of [
      '/pause',
      '/block',
      '/confirm',
      '/shift-check',
      '/tick',
      '/stand-in',
      `${at}/invalid`,
      '/finish',
    ]) {
      const { status, body } = await send(path, {});
      expect([path, status, body.errors?.length > 0]).toEqual([path, 422, true]);
    }
    expect((await technician.get('/jobs/00000000-0000-4000-8000-000000000000')).status).toBe(404);
    expect((await technician.get('/jobs/nonsense')).status).toBe(422);
  });

  it('asks for a reason when a result is corrected, and keeps both', async () => {
    const { id } = job.specimens[0]!;
    const typed = (value: number, why?: string) =>
      send(`/specimens/${id}/results`, { results: [{ key: 'peak-load', value, unit: 'N' }], ...(why ? { why } : {}) });
    expect((await typed(2800)).status).toBe(200);
    expect((await typed(2800)).status).toBe(200); // the same again is no correction
    const without = await typed(2810);
    expect([without.status, without.body.errors[0].field]).toEqual([422, 'why']);
    const corrected = await typed(2810, 'Misread the display');
    expect(corrected.body.specimens[0].results[0]).toMatchObject({ value: 2810, revision: 2, origin: 'typed' });
    expect(
      await sql(
        `select value, revision, why from result where specimen_id = $1 and key = 'peak-load' order by revision`,
        [id],
      ),
    ).toEqual([
      { value: 2800, revision: 1, why: null },
      { value: 2810, revision: 2, why: 'Misread the display' },
    ]);
  });

  it('computes strength again when lengths come later', async () => {
    const { id } = job.specimens[0]!;
    const put = await technician.put<JobView>(`/jobs/${job.id}/specimens/${id}/dimensions`, {
      dimensions: { widthMm: [10], thicknessMm: [4.004, 3.996] },
    });
    // 2810 N / (10 mm × 4 mm) = 70.25 MPa
    expect(put.body.specimens[0]!.results.find(({ key }) => key === 'peak-stress')).toMatchObject({
      value: expect.closeTo(70.25, 9),
      origin: 'computed',
    });
  });

  it('pauses with a reason, goes on, and marks specimens as invalid or not tested', async () => {
    expect((await send('/pause', { why: 'Break' })).body).toMatchObject({ state: 'paused', why: 'Break' });
    expect((await send('/resume')).body).toMatchObject({ state: 'running', why: null });
    const spoilt = await send(`/specimens/${job.specimens[1]!.id}/invalid`, { why: 'Broke in the jaw' });
    expect(spoilt.body.specimens[1]).toMatchObject({ fate: 'invalid', invalidWhy: 'Broke in the jaw' });
    // Taking it back needs a reason as well; without results it is only here again.
    const valid = await send(`/specimens/${job.specimens[1]!.id}/invalid`, {
      why: 'It was another piece',
      fate: 'valid',
    });
    expect(valid.body.specimens[1]).toMatchObject({ fate: 'arrived', invalidWhy: null });
    await send(`/specimens/${job.specimens[1]!.id}/invalid`, { why: 'Broke in the jaw' });
    const done = await send('/finish', {
      conditions: { temperatureC: 22.8, humidityPct: 51, deviations: 'One piece was lost' },
      notTestedWhy: 'Lost on the way',
    });
    expect([done.status, done.body.state, done.body.specimens[2].fate]).toEqual([200, 'done', 'not-tested']);
  });

  it('leaves its train on the frame, its duration, its record, and the results with statistics', async () => {
    const rigs = await sql('select item_id from rig_link where frame_id = $1', [bench.items[FIRST.frame]]);
    expect(rigs.map((row: { item_id: string }) => row.item_id).sort()).toEqual(
      [bench.items[FIRST.cell], bench.items[FIRST.grips]].sort(),
    );
    expect(await sql('select specimens from duration where job_id = $1', [job.id])).toEqual([{ specimens: 2 }]);
    const kinds = (await sql('select kind from record_event where subject_id = $1 order by seq', [job.id])).map(
      ({ kind }: { kind: string }) => kind,
    );
    expect(kinds).toEqual(
      expect.arrayContaining([
        'job/taken',
        'job/rigged',
        'job/shift-checked',
        'job/checked',
        'job/running',
        'results/entered',
        'specimen/measured',
        'job/paused',
        'specimen/invalid',
        'job/done',
      ]),
    );
    const [found] = (await bench.requester.get<any>(`/requests/${job.request.id}/results`)).body;
    expect(found.statistics.find(({ key }: any) => key === 'peak-stress')).toMatchObject({
      n: 1,
      mean: expect.closeTo(70.25, 9),
      unit: 'MPa',
    });
    expect(found.rows.map(({ fate, invalidWhy }: any) => [fate, invalidWhy])).toEqual([
      ['tested', null],
      ['invalid', 'Broke in the jaw'],
      ['not-tested', 'Lost on the way'],
    ]);
  });

  it('is over: every further move names the state', async () => {
    const [status, code, , facts] = await refused(send('/pause', { why: 'Too late' }));
    expect([status, code, facts['state'], facts['waysOut']]).toEqual([409, 'job/move-not-allowed', 'done', []]);
  });
});

describe('a job that goes on with other items', () => {
  it('keeps what its figures were found on', async () => {
    await readyRequest(bench, 'Two cells');
    await publishPlan(bench);
    job = (await technician.post<JobView>('/bench/take', {})).body;
    expect(job.setup.every(({ action }) => action === 'keep')).toBe(true);
    job = await rig(technician, job);
    // The cell stayed on the frame: its check of the job before still holds.
    expect(job.checks.find(({ key }) => key === 'shift-check')!.done).toBe(true);
    job = await check(technician, job);
    await send('/start');
    const results = [{ key: 'peak-load', value: 2700, unit: 'N' }];
    await send(`/specimens/${job.specimens[0]!.id}/results`, { results });
    const blocked = await send('/block', { why: 'The display drifts', itemId: bench.items[FIRST.cell] });
    expect(blocked.body).toMatchObject({ state: 'blocked', why: 'The display drifts' });
    await send('/unblock', { why: 'With the other cell' }, bench.manager);
    await publishPlan(bench, [{ ...FIRST, cell: 'LC-5K-9' }]);
    job = (await technician.post<JobView>('/bench/take', {})).body;
    expect(job.specimens.map(({ fate }) => fate)).toEqual(['tested', 'arrived', 'arrived']);
    job = await check(technician, await rig(technician, job));
    await send('/start');
    await send(`/specimens/${job.specimens[1]!.id}/results`, { results });
    for (const { id } of job.specimens.slice(0, 2)) await measure(id);
    const done = await send('/finish', { conditions: { temperatureC: 23 }, notTestedWhy: 'Enough for today' });
    expect(done.body.state).toBe('done');
    const found = await bench.lab.records.transaction((records) => resultsOfRequest(records, job.request.id));
    expect(found[0]!.items.map(({ item: { tag } }) => tag)).toEqual([FIRST.frame, 'LC-5K-9', FIRST.grips, FIRST.cell]);
    const impact = await bench.manager.get<any>(`/items/${bench.items[FIRST.cell]}/impact?since=2020-01-01T00:00:00Z`);
    expect(impact.body.jobs.find(({ reference }: { reference: string }) => reference === job.reference)).toMatchObject({
      results: 1,
    });
    await sql('update fault set closed_at = $1', [labClock.now()]);
  });
});

describe('a result that was asked for and is missing', () => {
  const finish = (more: object = {}) => send('/finish', { conditions: { temperatureC: 23 }, ...more });

  it('keeps the job from being finished, by its name and that of the specimen', async () => {
    const ask = { ...bench.batch.ask, results: ['peak-stress', 'modulus', 'strain-at-break'] };
    await readyRequest(bench, 'Three results', [{ ...bench.batch, ask, specimenCount: 2 }]);
    await publishPlan(bench, [{ ...FIRST, cell: 'LC-5K-9' }]);
    job = (await technician.post<JobView>('/bench/take', {})).body;
    job = await check(technician, await rig(technician, job));
    await send('/start');
    const [first, second] = job.specimens;
    const peak = { key: 'peak-load', value: 2700, unit: 'N' };
    await send(`/specimens/${first!.id}/results`, {
      results: [peak, { key: 'modulus', value: 8.9, unit: 'GPa' }, { key: 'strain-at-break', value: 3, unit: '%' }],
    });
    await send(`/specimens/${second!.id}/results`, { results: [peak] });
    await measure(first!.id);
    const [status, code, sentence, facts] = await refused(finish());
    expect([status, code]).toEqual([409, 'bench/results-missing']);
    expect(sentence).toContain(`${second!.label} (Tensile strength, Tensile modulus, Strain at break)`);
    expect(facts['missing']).toEqual([
      {
        ...{ specimenId: second!.id, label: second!.label },
        results: ['peak-stress', 'modulus', 'strain-at-break'].map((key) => expect.objectContaining({ key })),
      },
    ]);
    const seen = (await technician.get<JobView>(`/jobs/${job.id}`)).body.specimens;
    expect(seen.map(({ missing }) => missing.length)).toEqual([0, 3]);
  });

  it('is no longer missing once a figure is there, and may be said with a reason, specimen by specimen', async () => {
    const { id } = job.specimens[1]!;
    await measure(id);
    const said = await send(`/specimens/${id}/results`, {
      results: [],
      missing: [{ key: 'modulus', why: 'The extensometer slipped' }],
    });
    expect(said.body.specimens[1].missing).toEqual([
      { key: 'modulus', label: 'Tensile modulus', why: 'The extensometer slipped', hint: null },
      { key: 'strain-at-break', label: 'Strain at break', why: null, hint: null },
    ]);
    const odd = await finish({ missing: [{ key: 'colour', why: 'Nobody looked' }] });
    expect([odd.status, odd.body.errors[0].field]).toEqual([422, 'missing[0].key']);
    const done = await finish({ missing: [{ key: 'strain-at-break', why: 'It went on beyond the travel' }] });
    expect([done.status, done.body.state]).toEqual([200, 'done']);
  });

  it('stands in the results and in the report with its reason', async () => {
    const [found] = (await bench.requester.get<any>(`/requests/${job.request.id}/results`)).body;
    const reasons = ['The extensometer slipped', 'It went on beyond the travel'];
    expect(found.rows.map(({ missing }: any) => missing.map(({ why }: any) => why))).toEqual([[], reasons]);
    const report = await bench.manager.post<any>(`/requests/${job.request.id}/report`);
    expect(report.body.missing.map(({ clause }: any) => clause)).not.toContain('7.8.2.1 m');
    const [batch] = report.body.document.batches;
    expect(batch.results.rows[1].missing.map(({ label }: any) => label)).toEqual([
      'Tensile modulus',
      'Strain at break',
    ]);
  });

  it('that nobody explains keeps a report from being issued', async () => {
    await sql(`update specimen set missing_why = '{}' where batch_id = $1`, [job.batch.id]);
    const report = await bench.manager.post<any>(`/requests/${job.request.id}/report`);
    expect(report.body.missing.map(({ clause }: any) => clause)).toContain('7.8.2.1 m');
  });
});

describe('a shift check that fails', () => {
  it('takes the cell out of use at once, and blocks the job', async () => {
    await readyRequest(bench, 'Second bracket');
    await publishPlan(bench);
    job = (await technician.post<JobView>('/bench/take', {})).body;
    expect(job.setup.map(({ action, item }) => `${action} ${item.tag}`)).toEqual([
      'take-off LC-5K-9',
      `keep ${FIRST.grips}`,
      `put-on ${FIRST.cell}`,
    ]);
    job = await rig(technician, job);
    // It was checked on this frame before, but it was off since.
    expect(job.checks.find(({ key }) => key === 'shift-check')).toMatchObject({
      done: false,
      detail: expect.stringContaining('fitted since'),
    });
    const failed = await send('/shift-check', {
      cellId: bench.items[FIRST.cell],
      reference: 1000,
      reading: 1010.1,
      unit: 'N',
    });
    expect([failed.status, failed.body.state]).toEqual([200, 'blocked']);
    expect(failed.body.why).toContain('1.01 %');
    const cell = await technician.get<any>(`/items/${bench.items[FIRST.cell]}`);
    expect(JSON.stringify(cell.body)).toContain('Shift check failed');
    const nothing = await technician.post<any>('/bench/take', {});
    expect([nothing.status, nothing.body.type]).toEqual([409, '/problems/bench/nothing-to-take']);
  });

  it('leaves the job to the manager, who lets it be planned again; what it needs is said at the bench', async () => {
    expect((await send('/unblock', { why: 'Another cell' })).status).toBe(403);
    const freed = await send('/unblock', { why: 'Another cell' }, bench.manager);
    expect([freed.status, freed.body.state]).toEqual([200, 'ready']);
    const { body } = await technician.get<any>('/bench');
    expect(body.nothingWhy).toMatch(new RegExp(`${job.reference}: .*${FIRST.cell}`));
  });

  it('is aborted by the manager only', async () => {
    expect((await send('/abort', { why: 'Not needed any more' })).status).toBe(403);
    expect((await send('/abort', { why: 'Not needed any more' }, bench.manager)).body.state).toBe('aborted');
  });
});
