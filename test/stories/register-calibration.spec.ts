import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import { jest } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import type { ImpactView, ItemDetail, NonconformityView } from '#libs/contract/src/index.js';
import { PersonEntity } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { CELL_5KN, FRAME_10KN, GRIP_5KN } from './register-items.js';
import { labClock } from '../support/lab-clock.js';

jest.setTimeout(60_000);

const daysAgo = (days: number) => new Date(labClock.nowMs() - days * MS_PER_DAY).toISOString();

let lab: Lab;
let manager: Client;
let technician: Client;
let cell: ItemDetail;
let frame: ItemDetail;

beforeAll(async () => {
  lab = await startLab({ worker: false });
  manager = await lab.signIn('manager');
  technician = await lab.signIn('technician');
  cell = (await manager.post<ItemDetail>('/items', CELL_5KN)).body;
  frame = (await manager.post<ItemDetail>('/items', FRAME_10KN)).body;
});
afterAll(() => lab?.stop());

const range = (over: object = {}) => ({ direction: 'tension', className: '1', from: 50, to: 5000, unit: 'N', ...over });
const certificate = (days: number, over: object = {}) => ({
  ...{ standard: 'ISO 7500-1', certificateNumber: `C-${days}`, laboratory: 'Northmoor calibration', asFound: 'within' },
  ...{ performedAt: daysAgo(days), ranges: [range()], ...over },
});

describe('a calibration', () => {
  it('is overdue from its date on, and in force again with the next', async () => {
    await manager.post(`/items/${cell.id}/calibrations`, certificate(400));
    expect((await technician.get(`/items/${cell.id}`)).body).toMatchObject({ calibrationStatus: 'overdue' });
    expect((await technician.get('/items?status=overdue')).body.rows).toMatchObject([{ tag: CELL_5KN.tag }]);
    const { status, body } = await manager.post<any>(`/items/${cell.id}/calibrations`, certificate(40));
    expect([status, body]).toEqual([
      201,
      { calibration: expect.objectContaining({ standard: 'ISO 7500-1' }), impact: null },
    ]);
    expect((await technician.get(`/items/${cell.id}`)).body).toMatchObject({ calibrationStatus: 'in-force' });
    expect((await technician.get('/calibration/due?days=30')).body).toEqual([]);
    expect((await technician.get('/calibration/due?days=365')).body).toMatchObject([
      { item: { tag: CELL_5KN.tag }, stops: [] },
    ]);
  });

  it('is entered for today at any hour of the day, and not for tomorrow', async () => {
    const { body: own } = await manager.post<ItemDetail>('/items', { ...CELL_5KN, tag: 'LC-5K-8' });
    const { timeZone } = (await manager.get<any>('/settings')).body;
    const dayOf = (ms: number) => new Intl.DateTimeFormat('en-CA', { timeZone }).format(ms);
    const enter = (performedAt: string) =>
      manager.post<any>(`/items/${own.id}/calibrations`, certificate(0, { performedAt }));
    const { status, body } = await enter(dayOf(labClock.nowMs()));
    expect([status, dayOf(Date.parse(body.calibration.performedAt))]).toEqual([201, dayOf(labClock.nowMs())]);
    expect(Date.parse(body.calibration.performedAt)).toBeLessThanOrEqual(labClock.nowMs());
    const sameDayNextYear = dayOf(labClock.nowMs()).replace(/^\d+/, (year) => String(Number(year) + 1));
    const { status: withDue } = await manager.post<any>(
      `/items/${own.id}/calibrations`,
      certificate(0, { performedAt: dayOf(labClock.nowMs()), dueAt: sameDayNextYear.replace('-02-29', '-02-28') }),
    );
    expect(withDue).toBe(201);
    const refused = await enter(dayOf(labClock.nowMs() + MS_PER_DAY));
    expect([refused.status, refused.body.errors.map((each: any) => each.field)]).toEqual([422, ['performedAt']]);
  });

  it('is refused by field: in the future, too long for its standard, without a range, in a wrong unit, with a strange file', async () => {
    const wrong: [object, string][] = [
      [{ performedAt: new Date(labClock.nowMs() + MS_PER_DAY).toISOString() }, 'performedAt'],
      [{ dueAt: new Date(labClock.nowMs() + 500 * MS_PER_DAY).toISOString() }, 'dueAt'],
      [{ dueAt: daysAgo(50) }, 'dueAt'],
      [{ ranges: [] }, 'ranges'],
      [{ ranges: [[]] }, 'ranges'],
      [{ ranges: [range({ unit: 'mm' })] }, 'ranges[0].unit'],
      [{ ranges: [range({ from: 6000 })] }, 'ranges[0].from'],
      [{ certificateFileId: randomUUID() }, 'certificateFileId'],
      [{ replaces: randomUUID() }, 'replaces'],
      [{ standard: 'House rule 7' }, 'intervalMonths'],
      [{ asFound: 'fine' }, 'asFound'],
    ];
    const { body: uncommon } = await manager.post<ItemDetail>('/items', {
      ...CELL_5KN,
      tag: 'LC-5K-7',
      calibrationIntervalMonths: null,
    });
    for (const [over, field] of wrong) {
      const { status, body } = await manager.post<any>(`/items/${uncommon.id}/calibrations`, certificate(20, over));
      expect([field, status, body.errors?.[0]?.field]).toEqual([field, 422, field]);
    }
    expect((await technician.post(`/items/${cell.id}/calibrations`, certificate(1))).status).toBe(403);
  });

  // Worked example of a 100 kN range, constructed and computed by hand from the formulas of ISO 7500-1:2018 6.4 (from memory).
  const steps = [1, 2, 5, 10, 20, 40, 60, 80, 100].map((nominal) => ({
    nominal,
    runs: [nominal * 1.001, nominal * 1.002, nominal * 1.0015],
    falling: null,
  }));
  const readings = { direction: 'tension', unit: 'kN', capacity: 100, resolution: 0.005, zeroResidual: 0.02, steps };

  it('is evaluated from readings: class, range and the figures of each step, in newtons', async () => {
    const { status, body } = await manager.post<any>('/calibrations/evaluate', {
      standard: 'ISO 7500-1',
      forceReadings: [readings],
    });
    expect([status, body.steps.length]).toEqual([200, 9]);
    // a = 0.005/1 = 0.5 % at 1 kN: class 1; 0.25 % at 2 kN: class 0.5 with q = −0.15 %, b = 0.1 %.
    expect(body.ranges).toEqual([
      { direction: 'tension', className: '0.5', from: 2000, to: 100_000, unit: 'N' },
      { direction: 'tension', className: '1', from: 1000, to: 100_000, unit: 'N' },
    ]);
    const entered = await manager.post<any>(`/items/${cell.id}/calibrations`, {
      ...certificate(30, { ranges: undefined }),
      forceReadings: [readings],
    });
    expect(entered.body.calibration).toMatchObject({ ranges: body.ranges, readings: { steps: expect.any(Array) } });
  });

  it('says which reading cannot be', async () => {
    const wrong = { ...readings, steps: [{ nominal: 120, runs: [1, 2, 3], falling: null }] };
    const { status, body } = await manager.post<any>('/calibrations/evaluate', {
      standard: 'ISO 7500-1',
      forceReadings: [wrong],
    });
    expect([status, body.errors[0].field, body.errors[0].unit]).toEqual([
      422,
      'forceReadings[0].steps[0].nominal',
      'N',
    ]);
    const unit = await manager.post<any>('/calibrations/evaluate', {
      standard: 'ISO 7500-1',
      forceReadings: [{ ...readings, unit: 'mm' }],
    });
    expect(unit.body.errors[0].field).toBe('forceReadings[0].unit');
    const both = await manager.post<any>('/calibrations/evaluate', { standard: 'ISO 7500-1' });
    expect(both.body.errors[0].field).toBe('forceReadings');
  });

  it('of an extensometer is evaluated as well', async () => {
    const extensionReadings = {
      ...{ unit: 'µm', gaugeLengthNominalMm: 50, gaugeLengthMeasuredMm: 50.1, resolutionMm: 0.0002 },
      steps: [0.1, 0.5, 1, 2, 3, 4, 5, 6, 8, 10].map((referenceMm) => ({
        referenceMm,
        runs: [referenceMm * 1002, referenceMm * 1003],
      })),
    };
    const { status, body } = await manager.post<any>('/calibrations/evaluate', {
      standard: 'ISO 9513',
      extensionReadings,
    });
    expect([status, body.ranges[0]]).toEqual([
      200,
      expect.objectContaining({ direction: 'extension', className: '0.5', to: 10, unit: 'mm' }),
    ]);
    const odd = await manager.post<any>('/calibrations/evaluate', { standard: 'ISO 7500-1', extensionReadings });
    expect(odd.body.errors[0].field).toBe('standard');
  });
});

describe('an item found out of tolerance', () => {
  let touched: { job: string; report: string };

  /** Work that the cell did: 200 days ago (before its last good calibration), 20 and 10 days ago. */
  beforeAll(async () => {
    await finishedJob('R-7001', 200);
    touched = await finishedJob('R-7002', 20, 'TR-2026-0007');
    await finishedJob('R-7003', 10, undefined, GRIP_5KN.tag);
  });

  async function finishedJob(
    reference: string,
    days: number,
    reportNumber?: string,
    grip = '',
  ): Promise<{ job: string; report: string }> {
    const [request, batch, job, report] = [randomUUID(), randomUUID(), randomUUID(), randomUUID()];
    const { id: requester } = await lab.records.manager.findOneByOrFail(PersonEntity, {
      email: 'requester@northmoor.example',
    });
    const ran = [daysAgo(days + 0.1), daysAgo(days)];
    const train = grip ? [] : [{ role: 'load-cell', itemId: cell.id }];
    const sql = (text: string, values: unknown[]) => lab.records.query(text, values);
    await sql(
      `insert into request (id, reference, title, state, team_id, requester_id, created_at, version)
       select $1, $2, 'Bracket', 'reported', team.id, $3, $4, 1 from team limit 1`,
      [request, reference, requester, ran[0]],
    );
    await sql(
      `insert into method (id, code, version, designation, title, test_type, data, entered_at) values ($1, $2, 1, 'M', 'M', 'tension', '{}', $3)`,
      [batch, reference.toLowerCase(), ran[0]],
    );
    await sql(
      `insert into batch (id, request_id, position, method_id, ask, specimen_count, version) values ($1, $2, 1, $1, '{}', 1, 1)`,
      [batch, request],
    );
    await sql(
      `insert into job (id, reference, batch_id, request_id, state, frame_id, train, started_at, finished_at, version)
       values ($1, $2, $3, $4, 'done', $5, $6, $7, $8, 1)`,
      [job, reference.replace('R', 'J'), batch, request, frame.id, JSON.stringify(train), ...ran],
    );
    if (reportNumber) {
      await sql(
        `insert into report (id, request_id, number, revision, state, document, prepared_by, prepared_at, version)
         values ($1, $2, $3, 1, 'issued', '{}', $4, $5, 1)`,
        [report, request, reportNumber, requester, ran[1]],
      );
    }
    return { job, report };
  }

  it('comes with every job, report and person that it touched since it was last found good', async () => {
    const { status, body } = await manager.post<any>(
      `/items/${cell.id}/calibrations`,
      certificate(1, { asFound: 'out-of-tolerance' }),
    );
    expect(status).toBe(201);
    const impact = body.impact as ImpactView;
    expect(impact.jobs.map(({ reference }) => reference)).toEqual(['J-7002']);
    expect(impact.reports.map(({ number }) => number)).toEqual(['TR-2026-0007']);
    expect(impact.people.map(({ name }) => name)).toEqual(['One requester']);
    expect(impact.sinceWhy).toBe('Last found good by calibration');
    expect(impact.jobs[0]!.id).toBe(touched.job);
  });

  it('is searched from another date when somebody knows better', async () => {
    const { body } = await technician.get<ImpactView>(`/items/${cell.id}/impact?since=${daysAgo(300)}`);
    expect(body.jobs.map(({ reference }) => reference)).toEqual(['J-7001', 'J-7002']);
    const frames = await technician.get<ImpactView>(`/items/${frame.id}/impact`);
    expect(frames.body.jobs).toHaveLength(3);
  });

  it('opens a nonconformity that keeps what it touched, and is closed with a decision', async () => {
    const opened = await manager.post<NonconformityView>(`/items/${cell.id}/nonconformity`, {
      what: 'Read 1.4 % high',
    });
    expect(opened).toMatchObject({
      status: 201,
      body: { reference: 'NC-0001', state: 'open', touched: { jobs: [{ reference: 'J-7002' }] } },
    });
    const { id, version } = opened.body;
    expect((await manager.patch(`/nonconformities/${id}`, { state: 'closed', decision: 'x' })).status).toBe(428);
    const header = { headers: { 'If-Match': `"${version}"` } };
    const decision = 'Customers told, TR-2026-0007 amended';
    const closed = await manager.patch<NonconformityView>(
      `/nonconformities/${id}`,
      { state: 'closed', decision },
      header,
    );
    expect(closed).toMatchObject({ status: 200, body: { state: 'closed', decision, closedAt: expect.any(String) } });
    expect((await manager.patch(`/nonconformities/${id}`, { state: 'open', decision }, header)).status).toBe(412);
    expect((await technician.get<NonconformityView[]>('/nonconformities')).body).toHaveLength(1);
    expect((await manager.post(`/items/${cell.id}/nonconformity`, { what: '' })).status).toBe(422);
  });
});
