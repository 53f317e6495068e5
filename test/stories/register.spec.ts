import { jest } from '@jest/globals';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { verifyRecord } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { CELL_5KN, FRAME_10KN, GRIP_5KN } from './register-items.js';

jest.setTimeout(60_000);

let lab: Lab;
let manager: Client;
let technician: Client;

beforeAll(async () => {
  lab = await startLab({ worker: false });
  manager = await lab.signIn('manager');
  technician = await lab.signIn('technician');
});
afterAll(() => lab?.stop());

async function registered(body: object): Promise<ItemDetail> {
  const { status, body: item } = await manager.post<ItemDetail>('/items', body);
  expect([status, item]).toEqual([201, expect.objectContaining({ state: 'in-service' })]);
  return item;
}

describe('the register', () => {
  let cell: ItemDetail;
  let frame: ItemDetail;
  let grip: ItemDetail;

  it('takes a frame, a load cell and a pair of grips', async () => {
    frame = await registered(FRAME_10KN);
    cell = await registered(CELL_5KN);
    grip = await registered(GRIP_5KN);
    expect(cell.calibrationStatus).toBe('never');
    const { body } = await technician.get('/items?kind=load-cell');
    expect(body).toMatchObject({ rows: [{ tag: 'LC-5K-1' }], next: null });
  });

  it('refuses a tag twice, and figures that cannot be, by field with bounds and unit', async () => {
    const { status, body } = await manager.post('/items', CELL_5KN);
    expect(status).toBe(422);
    expect(body.errors).toEqual([expect.objectContaining({ field: 'tag', found: 'LC-5K-1' })]);
    const wrong = { ...CELL_5KN, tag: 'LC-5K-2', massKg: -1, details: { ...CELL_5KN.details, capacityN: 1e12 } };
    const refused = await manager.post('/items', wrong);
    expect(refused.status).toBe(422);
    expect(refused.body.errors[0]).toMatchObject({ field: 'massKg', unit: 'kg' });
    const { body: inCore } = await manager.post('/items', { ...wrong, massKg: 1 });
    expect(inCore.errors).toEqual([expect.objectContaining({ field: 'details.capacityN', unit: 'N' })]);
  });

  it('lets nobody but the manager change it, and the requester not even look', async () => {
    expect((await technician.post('/items', { ...CELL_5KN, tag: 'LC-X' })).status).toBe(403);
    expect((await (await lab.signIn('requester')).get('/items')).status).toBe(403);
  });

  it('changes an item only for who has seen its newest version', async () => {
    const { calibrations: _c, ...seen } = cell;
    const body = { ...CELL_5KN, place: 'Drawer 4' };
    expect((await manager.patch(`/items/${seen.id}`, body)).status).toBe(428);
    const first = await manager.patch(`/items/${seen.id}`, body, { headers: { 'If-Match': `"${seen.version}"` } });
    expect(first).toMatchObject({ status: 200, body: { place: 'Drawer 4', version: seen.version + 1 } });
    const stale = await manager.patch(`/items/${seen.id}`, CELL_5KN, { headers: { 'If-Match': `"${seen.version}"` } });
    expect(stale).toMatchObject({ status: 412, body: { facts: { version: seen.version + 1 } } });
  });

  it('knows what hangs on a frame, and an item only once', async () => {
    const links = [
      { role: 'load-cell', itemId: cell.id },
      { role: 'ends', itemId: grip.id },
    ];
    const seen = async () => {
      const { body } = await technician.get('/rigs');
      return body.find((rig: { frame: { id: string } }) => rig.frame.id === frame.id).version as number;
    };
    const bare = await seen();
    const put = (onto: string, version: number, body: unknown) =>
      technician.put(`/rigs/${onto}`, body, { headers: { 'If-Match': `"${version}"` } });
    expect((await technician.put(`/rigs/${frame.id}`, { links })).status).toBe(428);
    const { status, body } = await put(frame.id, bare, { links });
    expect([status, body.links.map(({ tag }: { tag: string }) => tag).sort()]).toEqual([200, ['GP-5K-1', 'LC-5K-1']]);
    expect((await technician.get(`/items/${cell.id}`)).body.fittedOn).toMatchObject({
      frameTag: 'UF-10',
      role: 'load-cell',
    });
    const late = await put(frame.id, bare, { links: [] });
    expect(late).toMatchObject({ status: 412, body: { facts: { version: await seen() } } });
    expect(late.body.detail).toBe('What is on UF-10 was changed by someone else. Reload it and try again.');
    const both = await Promise.all([0, 1].map(async (at) => put(frame.id, body.version, { links: [links[at]] })));
    expect(both.map((answer) => answer.status).sort()).toEqual([200, 412]);
    expect((await put(frame.id, await seen(), { links })).status).toBe(200);
    const twice = await put(frame.id, await seen(), { links: [links[0], { ...links[0], role: 'ends' }] });
    expect(twice).toMatchObject({ status: 422, body: { errors: [{ field: 'links[1].itemId' }] } });
    expect((await put(cell.id, bare, { links })).status).toBe(404);
    const unread = await put(frame.id, await seen(), { links: [{ role: 'ends', itemId: 'x' }] });
    expect(unread).toMatchObject({ status: 422, body: { errors: [{ field: 'links[0].itemId' }] } });
  });

  it('makes an item faulty by a report, and well again when the fault is closed', async () => {
    const open = await technician.post(`/items/${grip.id}/faults`, { what: 'Upper wedge is chipped' });
    expect(open).toMatchObject({ status: 201, body: { state: 'faulty', faults: [{ closedAt: null }] } });
    const faultId = open.body.faults[0].id;
    expect((await technician.post(`/faults/${faultId}/close`, { remedy: 'New wedge' })).status).toBe(403);
    const closed = await manager.post(`/faults/${faultId}/close`, { remedy: 'New wedge' });
    expect(closed).toMatchObject({ status: 200, body: { state: 'in-service' } });
    expect((await manager.post(`/faults/${faultId}/close`, { remedy: 'Again' })).status).toBe(409);
  });

  it('keeps spans in which a frame is down, and refuses one that ends before it starts', async () => {
    const span = { kind: 'down', startsAt: '2030-05-06T08:00:00Z', endsAt: '2030-05-08T16:00:00Z', why: 'Drive belt' };
    const { body } = await manager.post(`/items/${frame.id}/windows`, span);
    expect(body.windows).toEqual([expect.objectContaining({ kind: 'down', why: 'Drive belt' })]);
    const turned = await manager.post(`/items/${frame.id}/windows`, { ...span, endsAt: span.startsAt });
    expect(turned).toMatchObject({ status: 422, body: { errors: [{ field: 'endsAt' }] } });
    expect((await manager.delete(`/windows/${body.windows[0].id}`)).status).toBe(204);
    expect((await manager.delete(`/windows/${body.windows[0].id}`)).status).toBe(404);
  });

  it('answers every other bad input by its field, and never with a fault of its own', async () => {
    const bad: [string, string, unknown, number][] = [
      ['GET', '/items/nonsense', undefined, 422],
      ['GET', '/items?kind=spoon', undefined, 422],
      ['GET', '/items?cursor=', undefined, 422],
      ['GET', '/items/00000000-0000-4000-8000-000000000000', undefined, 404],
      ['POST', '/items', {}, 422],
      ['POST', '/items', { ...CELL_5KN, colour: 'red' }, 422],
      ['POST', '/items', { ...CELL_5KN, tag: 'Q', details: { ...CELL_5KN.details, frameCoupling: 7 } }, 422],
      ['POST', '/items', { ...CELL_5KN, tag: 'Q\u0000' }, 422],
      ['POST', '/items', { ...CELL_5KN, tag: 'Q', ratings: { tension: 'much' } }, 422],
      ['POST', `/items/${cell.id}/state`, { state: 'asleep', why: 'x' }, 422],
      ['POST', `/items/${cell.id}/faults`, { what: '' }, 422],
      ['POST', `/items/${cell.id}/windows`, { kind: 'down', startsAt: 'today', endsAt: 'never', why: 'x' }, 422],
      ['GET', '/record?cursor=x', undefined, 422],
    ];
    for (const [method, path, body, status] of bad) {
      const answer = await manager.send<any>(method, path, body);
      expect([method, path, answer.status]).toEqual([method, path, status]);
      if (status === 422)
        expect(answer.body.errors[0]).toMatchObject({
          field: expect.stringMatching(/./),
          sentence: expect.any(String),
        });
    }
  });
});

describe('the register as a file', () => {
  const importing = (csv: string, dryRun: boolean) =>
    manager.send<any>('POST', `/items/import?dryRun=${dryRun}`, csv, { headers: { 'content-type': 'text/csv' } });

  it('goes out and comes back without changing anything', async () => {
    const { body: csv } = await manager.get<string>('/items/export.csv');
    const { body } = await importing(csv, true);
    expect(body).toMatchObject({ dryRun: true, lines: 3, created: 0, updated: 0, problems: [] });
  });

  it('says every bad line in a dry run, and keeps nothing while one is bad', async () => {
    const { body: csv } = await manager.get<string>('/items/export.csv?kind=load-cell');
    const [header, line] = csv.trim().split('\r\n') as [string, string];
    const file = [
      header,
      line.replace('LC-5K-1', 'LC-5K-9'),
      line.replace('LC-5K-1', 'LC-5K-8').replace(',5000,', ',much,'),
    ].join('\n');
    const { body } = await importing([file, `${line},`].join('\n'), true);
    expect(body.problems).toEqual([
      { line: 3, field: 'details.capacityN', sentence: expect.stringContaining('much') },
      { line: 4, field: '', sentence: expect.stringMatching(/^This line has \d+ cells; the header has \d+\.$/) },
    ]);
    expect(body).toMatchObject({ lines: 3, created: 1, updated: 0 });
    const refused = await importing([file, `${line},`].join('\n'), false);
    expect(refused).toMatchObject({ status: 422, body: { facts: { lines: 3, problems: body.problems } } });
    expect(refused.body.detail).toMatch(/^Nothing was saved\. Line 3, details\.capacityN: /);
    expect((await manager.get('/items?q=LC-5K-9')).body.rows).toEqual([]);
    const good = await importing([header, line.replace('LC-5K-1', 'LC-5K-9')].join('\n'), false);
    expect(good.body).toMatchObject({ created: 1, problems: [] });
    expect((await manager.get('/items?q=LC-5K-9')).body.rows).toMatchObject([{ tag: 'LC-5K-9' }]);
  });

  it('changes what a line says otherwise, and records just that', async () => {
    const { body: csv } = await manager.get<string>('/items/export.csv?kind=load-cell');
    const { body } = await importing(csv.replace('Drawer 4', 'Drawer 5'), false);
    expect(body).toMatchObject({ created: 0, updated: 1, problems: [] });
    const [whole, last] = (await manager.get('/record')).body.rows;
    expect(whole).toMatchObject({ kind: 'items/imported', after: { created: 0, updated: 1 } });
    expect(last).toMatchObject({ kind: 'item/changed', before: { place: 'Drawer 4' }, after: { place: 'Drawer 5' } });
    const [byTag] = (await manager.get('/record?subject=LC-5K-1')).body.rows;
    expect(byTag.seq).toBe(last.seq);
    expect((await manager.get('/record?subject=LC-NOWHERE')).body.rows).toEqual([]);
  });

  it('keeps every letter of a file as a spreadsheet saves it in Windows-1252, and says what it was read as', async () => {
    const { body: csv } = await manager.get<string>('/items/export.csv?kind=load-cell');
    const sent = Buffer.from(csv.replace('Drawer 5', 'Prüfschrank 5'), 'latin1');
    const answer = await manager.send<any>('POST', '/items/import', sent, { headers: { 'content-type': 'text/csv' } });
    expect(answer.body).toMatchObject({ encoding: 'Windows-1252', updated: 1 });
    expect((await manager.get('/items?q=LC-5K-1')).body.rows[0].place).toBe('Prüfschrank 5');
  });

  it('never begins a cell that a spreadsheet would run', async () => {
    await registered({ ...GRIP_5KN, tag: 'GP-F', name: '=HYPERLINK("http://x")' });
    const { body: csv } = await manager.get<string>('/items/export.csv?kind=grip');
    expect(csv).toContain(`"'=HYPERLINK(`);
    const newest = async () => (await manager.get('/record')).body.rows[0].seq;
    const before = await newest();
    expect((await importing(csv, false)).body).toMatchObject({ created: 0, updated: 0, problems: [] });
    expect(await newest()).toBe(before); // nothing was changed, so nothing is recorded
    expect((await manager.get('/items?q=GP-F')).body.rows[0].name).toBe('=HYPERLINK("http://x")');
  });

  it.each([
    ['', 422],
    ['kind\ngrip', 200],
    ['tag,kind,colour\nA,grip,red', 200],
    ['kind,tag\n"grip', 200],
    [`kind,tag\n${'\u0000'},b`, 422],
    ['PK\u0003\u0004 a workbook', 422],
    ['kind,tag\ngrip,Zugpr\uFFFDf', 422],
  ])('tells what is wrong with the file %p', async (csv, status) => {
    const answer = await importing(csv, true);
    expect(answer.status).toBe(status);
    if (status === 200) expect(answer.body.problems.length).toBeGreaterThan(0);
  });
});

describe('files', () => {
  it('come back byte for byte, only to be saved', async () => {
    const bytes = Uint8Array.from([37, 80, 68, 70, 0, 255, 10]);
    const { status, body } = await manager.send<any>('POST', '/files?name=cert.pdf', bytes, {
      headers: { 'content-type': 'application/pdf' },
    });
    expect([status, body.sha256]).toEqual([201, expect.stringMatching(/^[0-9a-f]{64}$/)]);
    const response = await manager.fetch(`/files/${body.id}`);
    expect(new Uint8Array(await response.arrayBuffer())).toEqual(bytes);
    expect(response.headers.get('content-disposition')).toMatch(/^attachment/);
    expect((await (await lab.signIn('requester')).get(`/files/${body.id}`)).status).toBe(404);
  });

  it('are refused when they are too large, empty or nameless', async () => {
    const large = await manager.send<any>('POST', '/files?name=a.bin', new Uint8Array(20 * 1024 * 1024 + 1));
    expect(large.status).toBe(413);
    expect((await manager.send<any>('POST', '/files?name=a.bin', new Uint8Array(0))).status).toBe(422);
    expect((await manager.send<any>('POST', '/files', new Uint8Array(3))).status).toBe(422);
  });
});

it('leaves a record of all that, whole and in order', async () => {
  const { body } = await manager.get('/record');
  expect(body.rows.map(({ kind }: { kind: string }) => kind)).toEqual(
    expect.arrayContaining(['item/registered', 'rig/changed', 'item/fault-closed']),
  );
  expect((await verifyRecord(lab.records.manager)).faults).toEqual([]);
});
