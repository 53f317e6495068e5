import { jest } from '@jest/globals';
import type { BatchBody, MethodView, RequestView } from '#libs/contract/src/index.js';
import { PersonEntity, RequestEntity, TaskRunEntity, setTeams, addTeam, addPerson } from '#libs/records/src/index.js';
import { hashPassword } from '#apps/api/src/platform/sessions.service.js';
import { MATERIALS } from '#seed/library/materials.js';
import { METHODS } from '#seed/library/methods.js';
import { randomUUID } from 'node:crypto';
import type { Client } from '../support/client.js';
import { startLab, TEST_PASSWORD, TEST_TEAM } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { allow } from './bench-lab.js';
import { CELL_5KN, FRAME_10KN, GRIP_5KN } from './register-items.js';
import { labClock } from '../support/lab-clock.js';

jest.setTimeout(60_000);

const OTHER_TEAM = { id: '6f1d2c3b-0000-4000-8000-000000000002', name: 'Tents and bags' };
const REVIEWED = { methodAgreed: true, capabilityShown: true, specimensAgreed: true, disposalAgreed: true };

let lab: Lab;
let requester: Client;
let stranger: Client;
let manager: Client;
let technician: Client;
let auditor: Client;
let batch: BatchBody;

beforeAll(async () => {
  lab = await startLab({ worker: false });
  await addOtherTeam();
  requester = await lab.signIn('requester');
  manager = await lab.signIn('manager');
  technician = await lab.signIn('technician');
  auditor = await lab.signIn('auditor');
  stranger = await lab.signIn('stranger@northmoor.example');
  await fillRegister();
  batch = await plasticBatch();
});
afterAll(() => lab?.stop());

async function addOtherTeam(): Promise<void> {
  const passwordHash = await hashPassword(TEST_PASSWORD);
  await lab.records.transaction(async (records) => {
    await addTeam(records, OTHER_TEAM);
    const id = randomUUID();
    await addPerson(records, {
      id,
      name: 'A stranger',
      email: 'stranger@northmoor.example',
      roles: ['requester'],
      passwordHash,
      createdAt: labClock.now(),
    });
    await setTeams(records, id, [OTHER_TEAM.id]);
  });
}

/** A frame, a calibrated cell, grips, and a technician who may run ISO 527-2 and is at work for a month. */
async function fillRegister(): Promise<void> {
  await manager.post('/items', FRAME_10KN);
  const cell = await manager.post<{ id: string }>('/items', CELL_5KN);
  await manager.post('/items', GRIP_5KN);
  await manager.post(`/items/${cell.body.id}/calibrations`, {
    ...{ standard: 'ISO 7500-1', certificateNumber: 'C-1', laboratory: 'Northmoor calibration', asFound: 'within' },
    performedAt: new Date(labClock.nowMs() - 86_400_000).toISOString(),
    ranges: ['tension', 'compression'].map((direction) => ({
      direction,
      className: '0.5',
      from: 5,
      to: 5000,
      unit: 'N',
    })),
  });
  const { id } = await lab.records.manager.findOneByOrFail(PersonEntity, { email: 'technician@northmoor.example' });
  await allow(lab, id);
}

async function plasticBatch(): Promise<BatchBody> {
  const plastics = METHODS.find(({ id }) => id === 'iso-527-2')!;
  const pa6 = MATERIALS.find(({ id }) => id === 'pa6-gf30')!;
  const method = await manager.post<MethodView>('/methods', { data: plastics });
  const material = await manager.post<{ id: string }>('/materials', { data: pa6 });
  expect([method.status, material.status]).toEqual([201, 201]);
  const geometry = {
    shape: 'rectangle',
    widthMm: 10,
    thicknessMm: 4,
    parallelLengthMm: 80,
    gripSeparationMm: 115,
    lengthMm: 170,
    endWidthMm: 20,
    endThicknessMm: 4,
  };
  return {
    ...{ label: 'Rear carrier bracket', methodId: method.body.id, materialId: material.body.id, specimenCount: 2 },
    ask: {
      strength: { low: 60, high: 90 }, // 90 MPa × 40 mm² = 3600 N: within cell and grips of 5 kN, margin of 20 % included
      ...{ geometry, endShape: 'flat', results: ['peak-stress'], temperatureC: null, hazards: [], confirmed: [] },
      options: { contactExtensometer: true, crossheadStrain: true, lowerForceClass: false },
    },
    asTyped: { 'geometry.widthMm': { value: '10,0', unit: 'mm' } },
  };
}

const draft = (over: object = {}) => ({ title: 'Bracket strength', teamId: TEST_TEAM.id, batches: [batch], ...over });
async function drafted(over: object = {}): Promise<RequestView> {
  const { status, body } = await requester.post<RequestView>('/requests', draft(over));
  expect([status, body]).toEqual([201, expect.objectContaining({ state: 'draft' })]);
  return body;
}
async function submitted(over: object = {}): Promise<RequestView> {
  const { id } = await drafted(over);
  const { status, body } = await requester.post<RequestView>(`/requests/${id}/submit`);
  expect([status, body]).toEqual([200, expect.objectContaining({ state: 'submitted' })]);
  return body;
}

describe('methods and materials', () => {
  it('of the library all pass the check of what somebody enters, and a known method gets its next version', async () => {
    for (const data of METHODS.slice(0, 12)) {
      const { status, body } = await manager.post<any>('/methods', { data });
      expect([data.id, status, body.errors]).toEqual([data.id, 201, undefined]);
    }
    const { body } = await requester.get<MethodView[]>('/methods');
    expect(new Set(body.map(({ code }) => code)).size).toBe(body.length);
    const again = await manager.post<MethodView>('/methods', { data: METHODS[0]! });
    expect(again.body.version).toBe(2);
    expect((await requester.get<any>(`/methods/${again.body.id}`)).body.versions).toHaveLength(2);
    expect((await requester.post('/methods', { data: METHODS[0] })).status).toBe(403);
  });

  it('are refused by the path of every field that is wrong', async () => {
    const data = {
      ...METHODS[0]!,
      speeds: [{ stage: 'whole', rule: { kind: 'warp' }, tolerancePct: 1, source: '' }],
      colour: 'red',
    };
    const { status, body } = await manager.post<any>('/methods', { data });
    expect([status, body.errors.map(({ field }: { field: string }) => field).sort()]).toEqual([
      422,
      ['data.colour', 'data.speeds[0].rule.kind'],
    ]);
    expect((await manager.post<any>('/materials', { data: {} })).body.errors[0].field).toBe('data.id');
  });
});

describe('matching', () => {
  const previewed = (ask: object, over: object = {}) =>
    requester.post<any>('/matching/preview', { methodId: batch.methodId, materialId: batch.materialId, ask, ...over });

  it('shows needs, trains and their names before anything is kept', async () => {
    const { status, body } = await previewed(batch.ask);
    expect(status).toBe(200);
    expect(body.candidates).toHaveLength(1);
    expect(body.items[body.candidates[0].frameId]).toEqual({
      tag: FRAME_10KN.tag,
      name: FRAME_10KN.name,
      kind: 'frame',
    });
    expect(body.drawings[0].segments.map(({ label }: { label: string }) => label)).toEqual(
      expect.arrayContaining([CELL_5KN.tag, GRIP_5KN.tag]),
    );
    expect(body.needs.peakHigh).toMatchObject({ unit: 'N', formula: expect.any(String) });
  });

  it('sees a change of the register at once', async () => {
    const { body } = await technician.get('/items?kind=grip');
    const fault = await technician.post<any>(`/items/${body.rows[0].id}/faults`, { what: 'Spring lost' });
    const without = await previewed(batch.ask);
    expect([without.body.candidates.length, without.body.refusals.length]).toEqual([0, 1]);
    await manager.post(`/faults/${fault.body.faults[0].id}/close`, { remedy: 'New spring' });
    expect((await previewed(batch.ask)).body.candidates).toHaveLength(1);
  });

  it('names every field that is wrong, as the form knows it', async () => {
    const { status, body } = await previewed({
      ...batch.ask,
      geometry: { shape: 'rectangle', widthMm: 0, thicknessMm: 1e9 },
    });
    expect(status).toBe(422);
    expect(body.errors.map(({ field }: { field: string }) => field)).toEqual(
      expect.arrayContaining(['geometry.widthMm', 'geometry.thicknessMm', 'geometry.gripSeparationMm']),
    );
    const strange = await previewed({
      ...batch.ask,
      wish: 1,
      endShape: 'cloud',
      geometry: { shape: 'rectangle', girthMm: 3 },
    });
    expect(strange.body.errors.map(({ field }: { field: string }) => field)).toEqual([
      'geometry.girthMm',
      'endShape',
      'wish',
    ]);
    expect((await previewed(batch.ask, { methodId: randomUUID() })).status).toBe(404);
    for (const ask of [
      {},
      { geometry: 7 },
      { ...batch.ask, results: 5 },
      { ...batch.ask, options: [] },
      { ...batch.ask, peak: { low: 'a' } },
    ]) {
      expect((await previewed(ask)).status).toBe(422);
    }
  });
});

describe('a request', () => {
  it('is drafted, shown as it was typed, and changed by who has seen its newest version', async () => {
    const request = await drafted();
    expect(request).toMatchObject({ waitsFor: 'Waits to be submitted', moves: ['submit', 'withdraw'] });
    expect(request.batches[0]).toMatchObject({ asTyped: batch.asTyped, method: { code: 'iso-527-2' } });
    const header = { headers: { 'If-Match': `"${request.version}"` } };
    const saved = await requester.patch<RequestView>(`/requests/${request.id}`, draft({ title: 'Bracket' }), header);
    expect(saved).toMatchObject({ status: 200, body: { title: 'Bracket', reference: request.reference } });
    expect((await requester.patch(`/requests/${request.id}`, draft(), header)).status).toBe(412);
  });

  it('is seen by its team and the lab; for others there is no such request', async () => {
    const { id } = await drafted();
    expect((await stranger.get(`/requests/${id}`)).status).toBe(404);
    expect((await stranger.post(`/requests/${id}/submit`)).status).toBe(404);
    expect((await stranger.post('/requests', draft())).status).toBe(422);
    expect((await stranger.get('/requests')).body).toEqual({ rows: [], next: null });
    expect((await auditor.get(`/requests/${id}`)).body).toMatchObject({ moves: [] });
    expect((await auditor.post(`/requests/${id}/messages`, { body: 'Hello' })).status).toBe(403);
  });

  it('is not submitted while something is missing or impossible: each field is named', async () => {
    const ask = { ...batch.ask, geometry: { shape: 'rectangle', widthMm: -3, thicknessMm: 4 } };
    const { id } = await drafted({ batches: [{ ...batch, ask }] });
    const { status, body } = await requester.post<any>(`/requests/${id}/submit`);
    expect(status).toBe(422);
    expect(body.errors).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ field: 'batches[0].ask.geometry.widthMm', found: '-3', unit: 'mm' }),
      ]),
    );
    const past = await drafted({ dueAt: '2020-01-01T00:00:00Z' });
    expect((await requester.post<any>(`/requests/${past.id}/submit`)).body.errors[0].field).toBe('dueAt');
    const limits = { lower: 80, upper: null, unit: 'MPa', of: 'mean', rule: 'simple', specification: 'NC-17' };
    const unwanted = await drafted({ conformity: { resultKey: 'modulus', ...limits } });
    const { body: limited } = await requester.post<any>(`/requests/${unwanted.id}/submit`);
    expect(limited.errors).toEqual([expect.objectContaining({ field: 'conformity.resultKey', found: 'modulus' })]);
    const wanted = limited.errors[0].allowed.replace('one of the results asked for: ', '').split(', ')[0];
    const foreign = await drafted({ conformity: { resultKey: wanted, ...limits, unit: 'furlong' } });
    expect((await requester.post<any>(`/requests/${foreign.id}/submit`)).body.errors).toEqual([
      expect.objectContaining({ field: 'conformity.unit', found: 'furlong' }),
    ]);
    const none = await drafted({ batches: [] });
    expect((await requester.post<any>(`/requests/${none.id}/submit`)).body.errors[0].field).toBe('batches');
  });

  it('gets a label on every specimen when it is submitted', async () => {
    const { reference, batches } = await submitted();
    expect(batches[0]!.specimens.map(({ label }) => label)).toEqual([`${reference}-1-01`, `${reference}-1-02`]);
  });

  it('goes back with a question, is answered and handed in again', async () => {
    const { id } = await submitted();
    expect((await manager.post(`/requests/${id}/return`, {})).status).toBe(422);
    expect((await requester.post(`/requests/${id}/return`, { why: 'x' })).status).toBe(403);
    const returned = await manager.post<RequestView>(`/requests/${id}/return`, { why: 'Dry or conditioned?' });
    expect(returned.body).toMatchObject({ state: 'returned', messages: [{ body: 'Dry or conditioned?' }] });
    await requester.post(`/requests/${id}/messages`, { body: 'Conditioned, 23/50.' });
    const again = await requester.post<RequestView>(`/requests/${id}/submit`);
    expect(again.body).toMatchObject({ state: 'submitted' });
    expect(again.body.batches[0]!.specimens).toHaveLength(2);
    expect(again.body.messages).toHaveLength(2);
  });

  it('names the ways out when a move is not allowed', async () => {
    const { id } = await drafted();
    const { status, body } = await manager.post<any>(`/requests/${id}/accept`, REVIEWED);
    expect([status, body.facts]).toEqual([409, { state: 'draft', move: 'accept', waysOut: ['submit', 'withdraw'] }]);
  });

  it('is accepted when every point of the review is settled, and then has its jobs', async () => {
    const { id, reference } = await submitted({
      conformity: {
        resultKey: 'peak-stress',
        lower: 80,
        upper: null,
        unit: 'MPa',
        of: 'mean',
        rule: 'simple',
        specification: 'NC-17',
      },
    });
    const unsettled = await manager.post<any>(`/requests/${id}/accept`, { ...REVIEWED, disposalAgreed: false });
    expect(unsettled.status).toBe(422);
    expect(unsettled.body.errors.map(({ field }: { field: string }) => field)).toEqual([
      'disposalAgreed',
      'decisionRuleAgreed',
    ]);
    const { status, body } = await manager.post<RequestView>(`/requests/${id}/accept`, {
      ...REVIEWED,
      decisionRuleAgreed: true,
    });
    expect([status, body.state]).toEqual([200, 'accepted']);
    expect(body.batches[0]!.job).toMatchObject({ reference: `${reference.replace('R-', 'J-')}-1`, state: 'waiting' });
    expect(body.review).toMatchObject({ by: { name: 'One manager' }, decisionRuleAgreed: true });
    expect(body.waitsFor).toBe('Waits for 2 specimens to arrive');
    const tasks = await lab.records.manager.findBy(TaskRunEntity, { name: 'replan' });
    expect(tasks.length).toBeGreaterThan(0);
  });

  it('is not accepted while no load train can run it: the reasons are told frame by frame', async () => {
    const ask = { ...batch.ask, strength: null }; // the library's band for this material reaches 190 MPa × 40 mm² = 7600 N
    const { id } = await submitted({ batches: [batch, { ...batch, ask }] });
    const { status, body } = await manager.post<any>(`/requests/${id}/accept`, REVIEWED);
    expect([status, body.type, body.facts.batch]).toEqual([409, '/problems/request/no-candidate', 2]);
    expect(body.facts.refusals).toEqual([{ frame: FRAME_10KN.tag, reasons: expect.any(Array) }]);
    expect((await manager.get(`/requests/${id}`)).body.state).toBe('submitted');
  });

  it('has its job released when the last specimen came and is conditioned', async () => {
    const { id, batches } = await submitted();
    await manager.post(`/requests/${id}/accept`, REVIEWED);
    const [first, second] = batches[0]!.specimens;
    const one = await technician.post<RequestView>(`/requests/${id}/arrivals`, { specimenIds: [first!.id] });
    expect(one.body.batches[0]!.job).toMatchObject({ state: 'waiting' });
    const arrivedAt = new Date(labClock.nowMs() - 3_600_000).toISOString();
    const both = await technician.post<RequestView>(`/requests/${id}/arrivals`, {
      specimenIds: [first!.id, second!.id],
      arrivedAt,
    });
    expect(both.body.batches[0]!.job).toMatchObject({ state: 'ready' });
    expect(both.body.waitsFor).toMatch(/^Specimens are conditioned until /);
    expect(both.body.batches[0]!.specimens[0]!.arrivedAt).not.toBe(arrivedAt); // the first arrival stands
    const strange = await technician.post<any>(`/requests/${id}/arrivals`, { specimenIds: [randomUUID()] });
    expect(strange).toMatchObject({ status: 422, body: { errors: [{ field: 'specimenIds' }] } });
    expect((await requester.post(`/requests/${id}/arrivals`, { specimenIds: [first!.id] })).status).toBe(403);
  });

  it('takes its jobs with it when it is withdrawn', async () => {
    const { id } = await submitted();
    await manager.post(`/requests/${id}/accept`, REVIEWED);
    const { body } = await requester.post<RequestView>(`/requests/${id}/withdraw`, { why: 'Design was changed' });
    expect(body).toMatchObject({
      state: 'withdrawn',
      moves: [],
      batches: [{ job: { state: 'aborted', why: 'Design was changed' } }],
    });
  });

  it('is copied into a new draft that asks for the same', async () => {
    const first = await submitted();
    const { body } = await requester.post<RequestView>(`/requests/${first.id}/copy`);
    expect(body).toMatchObject({ state: 'draft', title: first.title });
    expect(body.batches[0]!.ask).toEqual(first.batches[0]!.ask);
    expect(body.reference).not.toBe(first.reference);
  });

  it('is accepted once, whoever and how often somebody presses', async () => {
    const { id } = await submitted();
    const answers = await Promise.all(
      Array.from({ length: 8 }, () => manager.post(`/requests/${id}/accept`, REVIEWED)),
    );
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
    expect(answers.filter(({ status }) => status === 409 || status === 412)).toHaveLength(7);
  });

  it('comes once for one Idempotency-Key', async () => {
    const key = { headers: { 'Idempotency-Key': randomUUID() } };
    const [first, second] = [
      await requester.post<RequestView>('/requests', draft(), key),
      await requester.post<RequestView>('/requests', draft(), key),
    ];
    expect(second.body.id).toBe(first.body.id);
  });

  it('is found page by page, by state and by words, each once', async () => {
    const seen: string[] = [];
    let next: string | null = '';
    for (let pages = 0; next !== null && pages < 20; pages++) {
      const { body }: { body: any } = await requester.get(`/requests?mine=true${next ? `&cursor=${next}` : ''}`);
      seen.push(...body.rows.map(({ id }: { id: string }) => id));
      next = body.next;
    }
    expect(new Set(seen).size).toBe(seen.length);
    const { body } = await requester.get('/requests?state=draft,returned&q=Bracket');
    expect(body.rows.every(({ state }: { state: string }) => state === 'draft' || state === 'returned')).toBe(true);
  });

  it('answers every other bad input by its field, and never with a fault of its own', async () => {
    const { id } = await drafted();
    const bad: [string, string, unknown, number][] = [
      ['GET', '/requests?state=lost', undefined, 422],
      ['GET', '/requests?cursor=zzz', undefined, 422],
      ['GET', '/requests?mine=maybe', undefined, 422],
      ['GET', '/requests/none', undefined, 422],
      ['POST', '/requests', { title: '' }, 422],
      ['POST', '/requests', draft({ weight: 1000 }), 422],
      ['POST', '/requests', draft({ dueAt: '2026-02-30T00:00:00Z' }), 422],
      ['POST', '/requests', draft({ batches: [{ ...batch, methodId: randomUUID() }] }), 422],
      ['POST', '/requests', draft({ batches: [{ ...batch, ask: 'strong' }] }), 422],
      ['POST', '/requests', draft({ batches: [{ ...batch, asTyped: { a: 'b' } }] }), 422],
      ['POST', '/requests', draft({ batches: [{ ...batch, ask: { ...batch.ask, note: '\u0000' } }] }), 422],
      [
        'POST',
        '/requests',
        draft({
          conformity: { resultKey: 'x', lower: 5, upper: 1, unit: '', of: 'mean', rule: 'simple', specification: 's' },
        }),
        422,
      ],
      ['POST', `/requests/${id}/messages`, { body: ' ' }, 422],
      ['POST', `/requests/${id}/withdraw`, { why: 7 }, 422],
    ];
    for (const [method, path, body, status] of bad) {
      const answer = await requester.send<any>(method, path, body);
      expect([method, path, body, answer.status]).toEqual([method, path, body, status]);
    }
    for (const geometry of [null, 5, [], 'x', {}, { shape: 'moon' }, { shape: 'rectangle', widthMm: {} }]) {
      const { body: request } = await requester.post<RequestView>(
        '/requests',
        draft({ batches: [{ ...batch, ask: { ...batch.ask, geometry } }] }),
      );
      expect((await requester.post<any>(`/requests/${request.id}/submit`)).status).toBe(422);
    }
  });
});

describe('requests as a file', () => {
  const importing = (who: Client, csv: string, dryRun = false) =>
    who.send<any>('POST', `/requests/import?dryRun=${dryRun}`, csv, { headers: { 'content-type': 'text/csv' } });
  const header =
    'request,title,team,method,material,specimens,geometry.shape,geometry.widthMm,geometry.thicknessMm,geometry.parallelLengthMm,geometry.gripSeparationMm,results,dueAt';
  const line = (request: string, width: string, over = '') =>
    `${request},Bracket,${TEST_TEAM.name},iso-527-2,pa6-gf30,5,rectangle,${width},4,80,115,peak-stress|modulus,${over}`;

  it('become drafts, lines with the same name being batches of one', async () => {
    const csv = [header, line('a', '10'), line('a', '12'), line('b', '10', '2031-01-01T12:00:00Z')].join('\n');
    expect((await importing(requester, csv, true)).body).toEqual({
      dryRun: true,
      encoding: 'UTF-8',
      lines: 3,
      created: 2,
      updated: 0,
      unchanged: 0,
      problems: [],
    });
    expect((await importing(requester, csv)).body).toMatchObject({ created: 2, problems: [] });
    const { body } = await requester.get<any>('/requests?state=draft&q=Bracket');
    expect(
      body.rows
        .slice(0, 2)
        .map(({ specimens }: { specimens: number }) => specimens)
        .sort(),
    ).toEqual([10, 5].sort());
    expect((await requester.post<any>(`/requests/${body.rows[0].id}/submit`)).body).toMatchObject({
      state: 'submitted',
    });
  });

  it('are all refused while one line is bad, and every bad cell is told', async () => {
    const before = (await requester.get<any>('/requests?state=draft')).body.rows.length;
    const csv = [
      header,
      line('a', 'wide'),
      line('b', '-3', 'soon'),
      line('c', '10').replace('iso-527-2', 'iso-0'),
      line('d', '10').replace(TEST_TEAM.name, 'Nobody'),
    ];
    const { status, body } = await importing(requester, csv.join('\n'));
    expect([status, body.type]).toEqual([422, '/problems/import/invalid']);
    expect(body.detail).toMatch(/^Nothing was saved\. Line 2, geometry\.widthMm: .* more\.$/);
    expect((await importing(requester, csv.join('\n'), true)).body).toMatchObject({
      created: 0,
      problems: body.facts.problems,
    });
    expect(body.facts.problems.map(({ line: at, field }: { line: number; field: string }) => [at, field])).toEqual(
      expect.arrayContaining([
        [2, 'geometry.widthMm'],
        [3, 'geometry.widthMm'],
        [3, 'dueAt'],
        [4, 'method'],
        [5, 'team'],
      ]),
    );
    expect((await requester.get<any>('/requests?state=draft')).body.rows).toHaveLength(before);
  });

  it('are only taken for a team of one’s own, and by who may ask', async () => {
    const csv = [header, line('a', '10')].join('\n');
    expect((await importing(stranger, csv, true)).body.problems).toEqual([
      expect.objectContaining({ line: 2, field: 'team' }),
    ]);
    expect((await importing(technician, csv)).status).toBe(403);
    expect((await importing(requester, '')).status).toBe(422);
    expect((await importing(requester, 'request,title\nx', true)).body.problems.length).toBeGreaterThan(0);
  });

  it('that came before are not made again, and keep what the file calls them, whose they are and the days they are due', async () => {
    const csv = (due: string) =>
      [
        `${header},requester`,
        `${line('KMD-17', '10', due)},requester@northmoor.example`,
        `${line('KMD-18', '10', '2031-12-16')},`,
      ].join('\n');
    expect((await importing(manager, csv('15.12.2031'))).body).toMatchObject({ created: 2, unchanged: 0 });
    const [seventeen, eighteen] = await Promise.all(
      ['KMD-17', 'KMD-18'].map(async (importedAs) => {
        const { id } = await lab.records.manager.findOneByOrFail(RequestEntity, { importedAs });
        return (await manager.get<RequestView>(`/requests/${id}`)).body;
      }),
    );
    expect(seventeen).toMatchObject({
      importedAs: 'KMD-17',
      dueAt: '2031-12-15T17:00:00.000Z', // the end of work by the lab's clock, which is London's
      requester: { name: 'One requester' },
    });
    expect(eighteen).toMatchObject({ dueAt: '2031-12-16T17:00:00.000Z', requester: { name: 'One manager' } });
    expect((await importing(manager, csv('15.12.2031'))).body).toMatchObject({
      created: 0,
      unchanged: 2,
      problems: [],
    });
    const { status, body } = await importing(manager, csv('17.12.2031'));
    expect(status).toBe(422);
    expect(body.facts.problems).toEqual([
      { line: 2, field: 'request', sentence: expect.stringMatching(/^KMD-17 is there already as R-\d+, and differs/) },
    ]);
  });

  it('name nobody whom the lab does not know, and only a manager brings in those of others', async () => {
    const csv = (mail: string) => [`${header},requester`, `${line('x', '10')},${mail}`].join('\n');
    const fields = async (who: Client, mail: string) =>
      (await importing(who, csv(mail), true)).body.problems.map(({ field }: { field: string }) => field);
    expect(await fields(manager, 'nobody@northmoor.example')).toEqual(['requester']);
    expect(await fields(requester, 'manager@northmoor.example')).toEqual(['requester']);
    expect(await fields(manager, 'technician@northmoor.example')).toEqual(['requester']);
    expect((await importing(manager, csv('').replace(',requester', ',old number'), true)).body.problems).toEqual([
      expect.objectContaining({ line: 1, field: 'old number' }),
    ]);
  });

  it('go out as they may be seen, and come back', async () => {
    await submitted({ title: '=cmd()' });
    const { body: csv } = await requester.get<string>('/requests/export.csv');
    expect(csv).toContain("'=cmd()");
    const { body } = await importing(requester, csv, true);
    const bad = body.problems.filter(
      ({ field }: { field: string }) => !field.startsWith('geometry') && field !== 'dueAt',
    );
    expect([body.lines > 10, bad]).toEqual([true, []]);
    expect((await stranger.get<string>('/requests/export.csv')).body.trim().split('\n')).toHaveLength(1);
  });
});
