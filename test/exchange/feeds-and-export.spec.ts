import ICAL from 'ical.js';
import { parse } from 'csv-parse/sync';
import type { ExportTable, FeedKeyView, JobView } from '#libs/contract/src/index.js';
import { ENTITIES, PersonEntity } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
import { benchLab, FIRST, publishPlan, readyRequest } from '../stories/bench-lab.js';
import type { BenchLab } from '../stories/bench-lab.js';

let bench: BenchLab;
let technicianId: string;

beforeAll(async () => {
  bench = await benchLab(await startLab({ worker: false }));
  const { lab } = bench;
  ({ id: technicianId } = await lab.records.manager.findOneByOrFail(PersonEntity, {
    email: 'technician@northmoor.example',
  }));
  await readyRequest(bench, 'Bracket, "left"; with a comma, and ünïcode that is long enough to be folded somewhere');
  await publishPlan(bench);
});
afterAll(() => bench?.lab.stop());

async function keyOf(client: Client): Promise<FeedKeyView> {
  return (await client.post<FeedKeyView>('/feed-keys', { name: 'Phone' })).body;
}

/** As a calendar program asks: without a session. */
function ask(path: string): Promise<Response> {
  return fetch(`${bench.lab.baseUrl}/api/v1${path}`);
}

/** Read by ical.js, which is not ours. */
function eventsIn(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as never);
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
}

describe('calendar feeds', () => {
  it('show a frame’s bookings to who has a key', async () => {
    const { key } = await keyOf(bench.technician);
    const answer = await ask(`/feeds/frames/${FIRST.frame}.ics?key=${key}`);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'text/calendar; charset=utf-8']);
    const [event, ...more] = eventsIn(await answer.text());
    expect(more).toEqual([]);
    expect(event!.summary).toMatch(/^J-\d+-1 Bracket, "left"; with a comma, and ünïcode that is long enough/);
    expect(event!.location).toBe(FIRST.frame);
    expect(event!.description).toContain(`Items ${[FIRST.grips, FIRST.cell].join(', ')}`);
    // From the start of the changeover to the end of the test: 30 min and 60 min.
    expect(event!.duration.toSeconds()).toBe(5_400);
    expect(event!.startDate.zone.tzid).toBe('UTC');
  });

  it('keep the entry of a job from plan to plan, under a number that rises', async () => {
    const { key } = await keyOf(bench.manager);
    const read = async () => eventsIn(await (await ask(`/feeds/frames/${FIRST.frame}.ics?key=${key}`)).text())[0]!;
    const before = await read();
    await publishPlan(bench);
    const after = await read();
    expect(after.uid).toBe(before.uid);
    expect(after.sequence).toBeGreaterThan(before.sequence);
  });

  it('show a technician what they have taken', async () => {
    const { key } = await keyOf(bench.technician);
    const feed = async () => eventsIn(await (await ask(`/feeds/people/${technicianId}.ics?key=${key}`)).text());
    expect(await feed()).toEqual([]);
    const { body } = await bench.technician.post<JobView>('/bench/take', {});
    expect((await feed()).map(({ uid }) => uid)).toEqual([`job-${body.id}@loadtrain`]);
  });

  it('are not there for a wrong key, a revoked one, somebody without the plan, and who has left', async () => {
    const kept = await keyOf(bench.technician);
    const revoked = await keyOf(bench.technician);
    const path = `/feeds/frames/${FIRST.frame}.ics`;
    expect((await bench.manager.delete(`/feed-keys/${revoked.id}`)).status).toBe(404);
    expect((await bench.technician.delete(`/feed-keys/${revoked.id}`)).status).toBe(204);
    expect((await bench.requester.post('/feed-keys', { name: 'Phone' })).status).toBe(403);
    const statuses = async (paths: string[]) => Promise.all(paths.map(async (one) => (await ask(one)).status));
    expect(
      await statuses([
        ...[
          path,
          `${path}?key=nonsense`,
          `${path}?key=${revoked.key}`,
          `/feeds/frames/${FIRST.cell}.ics?key=${kept.key}`,
        ],
        ...[`/feeds/people/nobody.ics?key=${kept.key}`, `${path}?key=${kept.key}`],
      ]),
    ).toEqual([404, 404, 404, 404, 404, 200]);
    const setRoles = (roles: string) =>
      bench.lab.records.query(`update person set roles = $1::text[] where id = $2`, [roles, technicianId]);
    await setRoles('{requester}');
    expect(await statuses([`${path}?key=${kept.key}`])).toEqual([404]);
    await setRoles('{technician}');
    expect(await statuses([`${path}?key=${kept.key}`])).toEqual([200]);
    const listed = (await bench.technician.get<FeedKeyView[]>('/feed-keys')).body;
    expect(listed.some(({ id }) => id === revoked.id)).toBe(false);
    expect(listed.every((view) => !('key' in view))).toBe(true);
  });
});

describe('the export of everything', () => {
  let auditor: Client;
  let tables: ExportTable[];

  beforeAll(async () => {
    auditor = await bench.lab.signIn('auditor');
    tables = (await auditor.get<ExportTable[]>('/export')).body;
  });

  /** Lines of JSON are no JSON to a client. */
  const linesOf = async (name: string) => (await auditor.fetch(`/export/${name}.jsonl`)).text();

  it('is for manager and auditor, and goes into the record', async () => {
    for (const path of ['/export', '/export/everything.jsonl', '/export/item.csv', '/export/item.jsonl'])
      expect((await bench.technician.get(path)).status).toBe(403);
    await auditor.get('/export/item.csv');
    const { body } = await auditor.get('/record?subject=item');
    expect(body.rows.map(({ kind }: { kind: string }) => kind)).toContain('export/taken');
    expect((await auditor.get('/export/session.csv')).status).toBe(404);
    expect((await auditor.get('/export/item%22;drop%20table%20item.csv')).status).toBe(404);
  });

  it('has every table of the lab but those that open doors or live for hours, each row once', async () => {
    const names = bench.lab.records.entityMetadatas.map(({ tableName }) => tableName);
    expect(names).toHaveLength(ENTITIES.length);
    const leftOut = ['session', 'sign_in_attempt', 'idempotency_key', 'fact_change'];
    expect(tables.map(({ name }) => name).sort()).toEqual(names.filter((name) => !leftOut.includes(name)).sort());
    const body = await linesOf('everything');
    const rows = body
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as { table: string; row: object });
    const counted = Object.fromEntries(
      tables.map(({ name }) => [name, rows.filter(({ table }) => table === name).length]),
    );
    // The export itself is one event more in the record, and one row its head.
    const events = (counted['record_event'] ?? 0) - tables.find(({ name }) => name === 'record_event')!.rows;
    expect(events).toBeGreaterThan(0);
    expect({ ...counted, record_event: 0 }).toEqual({
      ...Object.fromEntries(tables.map(({ name, rows: n }) => [name, n])),
      record_event: 0,
    });
  });

  it('gives away no secret', async () => {
    await bench.manager.post('/webhooks', { url: 'https://tickets.northmoor.example/', kinds: ['plan/published'] });
    const body = await linesOf('everything');
    expect(body).toContain('tickets.northmoor.example');
    const secrets = await bench.lab.records.query<{ secret: string }[]>(
      `select password_hash as secret from person where password_hash is not null union all select key_hash from feed_key
       union all select secret from webhook`,
    );
    expect(secrets.length).toBeGreaterThan(5);
    expect(secrets.filter(({ secret }) => body.includes(secret))).toEqual([]);
    const secretive = tables.flatMap(({ name, columns }) =>
      columns.filter((column) => /hash$|secret/.test(column)).map((column) => `${name}.${column}`),
    );
    // These prove what was written or read, and open nothing.
    expect(secretive).toEqual(['record_event.prev_hash', 'record_event.hash', 'record_head.hash']);
  });

  it('as CSV begins no formula, and says what JSON says', async () => {
    await bench.manager.post('/teams', { name: '=HYPERLINK("http://northmoor.example")' });
    const { body, headers } = await auditor.get<string>('/export/team.csv');
    expect(headers.get('content-disposition')).toBe('attachment; filename="team.csv"');
    const rows = parse<Record<string, string>>(body, { columns: true });
    expect(rows.map(({ name }) => name)).toContain('\'=HYPERLINK("http://northmoor.example")');
    expect(rows.every((row) => Object.values(row).every((cell) => !/^[=+@\t\r]/.test(cell)))).toBe(true);
    const lines = (await linesOf('team')).trimEnd().split('\n');
    expect(lines).toHaveLength(rows.length);
    const requests = parse<{ title: string }>((await auditor.get<string>('/export/request.csv')).body, {
      columns: true,
    });
    expect(requests[0]!.title).toMatch(/^Bracket, "left"; with a comma/);
  });

  it('hands out files in base64 as JSON, and leaves them out as CSV', async () => {
    const content = Buffer.from([0, 255, 10, 13, 44]);
    await bench.manager.send('POST', '/files?name=bytes.bin', new Uint8Array(content));
    const [line] = (await linesOf('stored_file')).trimEnd().split('\n');
    const { row } = JSON.parse(line!) as { row: { content: string } };
    expect(Buffer.from(row.content, 'base64')).toEqual(content);
    expect((await auditor.get<string>('/export/stored_file.csv')).body.split('\r\n')[0]).not.toContain('content');
  });

  it('holds nothing when the reader leaves', async () => {
    for (let at = 0; at < 6; at++) {
      const abort = new AbortController();
      const answer = await auditor.fetch('/export/everything.jsonl', { signal: abort.signal });
      expect(answer.status).toBe(200);
      abort.abort();
      await answer.text().catch(() => {});
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    const [{ idle }] = await bench.lab.records.query<[{ idle: number }]>(
      `select count(*)::int as idle from pg_stat_activity where datname = current_database() and state = 'idle in transaction'`,
    );
    expect(idle).toBe(0);
  });
});
