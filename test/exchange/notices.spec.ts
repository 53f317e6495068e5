import { createHmac, randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { IncomingHttpHeaders, Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type {
  DeliveryView,
  JobView,
  NoticesView,
  RequestView,
  StatusView,
  WebhookView,
} from '#libs/contract/src/index.js';
import { addPerson, announce, remind, setTeams, tidyUp } from '#libs/records/src/index.js';
import { postMessage } from '#apps/worker/src/deliver-webhook/post-message.js';
import type { Client } from '../support/client.js';
import { labClock } from '../support/lab-clock.js';
import { startLab, TEST_TEAM } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { PostOffice } from '../support/post-office.js';
import { until } from '../support/until.js';
import { benchLab, readyRequest } from '../stories/bench-lab.js';
import type { BenchLab } from '../stories/bench-lab.js';

interface Received {
  headers: IncomingHttpHeaders;
  body: string;
}

/** Another program; it answers with these statuses in turn, and with the last one from then on. */
class Receiver {
  readonly got: Received[] = [];
  answers: number[] = [204];
  private readonly server: Server = createServer((request, response) => {
    let body = '';
    request.setEncoding('utf8').on('data', (part: string) => (body += part));
    request.on('end', () => {
      this.got.push({ headers: request.headers, body });
      const status = this.answers.length > 1 ? this.answers.shift()! : this.answers[0]!;
      response.writeHead(status, { location: 'http://127.0.0.1:1/' }).end();
    });
  });

  async open(): Promise<string> {
    await once(this.server.listen(0, '127.0.0.1'), 'listening');
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}/lab`;
  }

  close(): Promise<void> {
    return new Promise((resolve) => this.server.close(() => resolve()));
  }
}

const office = new PostOffice();
let lab: Lab;
let bench: BenchLab;
let requester: Client;
let manager: Client;

beforeAll(async () => {
  const smtpUrl = await office.open();
  const config = { smtpUrl, mailFrom: 'Lab <lab@northmoor.example>', webhooksToPrivate: 'yes' as const };
  lab = await startLab({ config });
  await lab.records.transaction(async (records) => {
    for (const name of ['colleague', 'gone']) {
      const id = randomUUID();
      const email = `${name}@northmoor.example`;
      const person = { id, name: `A ${name}`, email, passwordHash: null, createdAt: labClock.now() };
      await addPerson(records, { ...person, roles: ['requester'] });
      await setTeams(records, id, [TEST_TEAM.id]);
    }
  });
  bench = await benchLab(lab);
  ({ requester, manager } = bench);
  await manager.put('/notices/preferences', { mail: 'off' });
});
afterAll(async () => {
  await lab?.stop();
  await office.close();
});

async function noticesOf(client: Client): Promise<NoticesView> {
  return (await client.get<NoticesView>('/notices')).body;
}

async function submitted(title: string): Promise<RequestView> {
  const draft = await requester.post<RequestView>('/requests', { title, teamId: TEST_TEAM.id, batches: [bench.batch] });
  return (await requester.post<RequestView>(`/requests/${draft.body.id}/submit`)).body;
}

describe('notices', () => {
  it('tell the managers of a submitted request, and its team of what becomes of it; never the one who did it', async () => {
    const { id, reference } = await submitted('Axle bracket');
    expect(await noticesOf(requester)).toEqual({ rows: [], next: null, unread: 0 });
    const [told] = (await noticesOf(manager)).rows;
    expect(told).toMatchObject({ kind: 'request/submitted', subject: `${reference} was submitted`, readAt: null });
    expect(told!.path).toBe(`/requests/${id}`);

    await manager.post(`/requests/${id}/return`, { why: 'Which colour is it?' });
    const { rows, unread } = await noticesOf(requester);
    expect(unread).toBe(1);
    expect(rows[0]).toMatchObject({ subject: `${reference} was returned` });
    expect(rows[0]!.sentence).toContain('Which colour is it?');
    expect((await noticesOf(manager)).rows).toHaveLength(1);
  });

  it('come by mail at once to the requester and the team, from what the mail server gets', async () => {
    const [mail] = await until(async () => (office.to('requester').length > 0 ? office.to('requester') : null));
    expect(mail!.subject).toMatch(/^R-\d+ was returned$/);
    expect(mail!.text).toContain('Axle bracket: the lab has a question before it can accept it. Which colour is it?');
    expect(mail!.text).toMatch(/http:\/\/localhost\/requests\/[0-9a-f-]{36}/);
    await until(async () => office.to('colleague').length === 1);
    expect(office.to('manager')).toEqual([]);
  });

  it('that the mail server refuses for good stay in the page, with why', async () => {
    const [row] = await until(async () => {
      const rows = await lab.records.query<{ mail_trouble: string | null }[]>(
        `select mail_trouble from notice join person on person.id = person_id where email like 'gone@%'`,
      );
      return rows[0]?.mail_trouble ? rows : null;
    });
    expect(row!.mail_trouble).toBe('The mail server refused with 550.');
    expect(office.to('gone')).toEqual([]);
    const { parts } = (await manager.get<StatusView>('/status')).body;
    expect(parts.find(({ part }) => part === 'mails')).toMatchObject({
      state: 'trouble',
      sentence: expect.stringMatching(/^1 of the last day’s mails/),
    });
  });

  it('are read one by one or all at once, each by their own', async () => {
    const { rows } = await noticesOf(requester);
    expect((await manager.post(`/notices/${rows[0]!.id}/read`)).status).toBe(404);
    expect((await requester.post(`/notices/${rows[0]!.id}/read`)).status).toBe(204);
    expect((await noticesOf(requester)).unread).toBe(0);
    expect((await manager.post('/notices/read-all')).status).toBe(204);
    expect(await noticesOf(manager)).toMatchObject({ unread: 0 });
  });

  it('are collected into one mail a day for those who want that', async () => {
    expect((await requester.put('/notices/preferences', { mail: 'hourly' })).body.errors[0].allowed).toBe(
      'one of at-once, daily, off',
    );
    await requester.put('/notices/preferences', { mail: 'daily' });
    expect((await requester.get('/notices/preferences')).body).toEqual({ mail: 'daily' });
    const before = office.to('requester').length;
    const { id, reference } = await submitted('Fork crown');
    await manager.post(`/requests/${id}/messages`, { body: 'We start on Monday.' });
    await manager.post(`/requests/${id}/decline`, { why: 'No grips for it.' });
    await until(async () => office.to('colleague').some(({ subject }) => subject === `${reference} was declined`));
    expect(office.to('requester')).toHaveLength(before);

    const waiting = await lab.records.query<{ payload: { personId: string }; ms: number }[]>(
      `select payload, extract(epoch from due_at - now())::float8 * 1000 as ms from task_run
       where name = 'send-digest' and dispatched_at is null`,
    );
    expect(waiting).toHaveLength(1);
    expect(waiting[0]!.ms).toBeLessThanOrEqual(86_400_000);
    await lab.records.transaction((records) => announce(records, 'send-digest', waiting[0]!.payload));
    const [digest] = await until(async () => {
      const mails = office.to('requester').slice(before);
      return mails.length > 0 ? mails : null;
    });
    expect(digest!.subject).toBe('2 things from the lab');
    expect(digest!.text.indexOf('We start on Monday.')).toBeLessThan(digest!.text.indexOf('No grips for it.'));
    await lab.records.transaction((records) => announce(records, 'send-digest', waiting[0]!.payload));
    await lab.records.transaction((records) => announce(records, 'send-digest', waiting[0]!.payload));
    await until(async () => {
      const [row] = await lab.records.query<[{ open: number }]>(
        `select count(*)::int as open from task_run where name = 'send-digest' and due_at <= now() and state in ('waiting', 'running')`,
      );
      return row.open === 0;
    });
    expect(office.to('requester')).toHaveLength(before + 1);
  });

  it('tell managers once that a calibration is overdue', async () => {
    const now = labClock.now();
    await lab.records.query(
      `update calibration set valid_from = $1::timestamptz - interval '2 years', due_at = $1::timestamptz - interval '1 second'`,
      [now],
    );
    expect(await remind(lab.acting)).toEqual({ overdue: 1 });
    await remind(lab.acting);
    const told = (await noticesOf(manager)).rows.filter(({ kind }) => kind === 'item/calibration-overdue');
    expect(told.map(({ subject }) => subject)).toEqual(['The calibration of LC-5K-1 is overdue']);
    await lab.records.query(`update calibration set due_at = $1::timestamptz + interval '1 year'`, [now]);
  });

  it('are told in the page within a second', async () => {
    const abort = new AbortController();
    const stream = await requester.fetch('/live', { signal: abort.signal });
    const reader = stream.body!.pipeThrough(new TextDecoderStream()).getReader();
    const { id } = await submitted('Seat post');
    await manager.post(`/requests/${id}/return`, { why: 'How long is it?' });
    const began = Date.now();
    let heard = '';
    while (!heard.includes('"topic":"notices"')) heard += (await reader.read()).value ?? '';
    expect(Date.now() - began).toBeLessThan(1_000);
    abort.abort();
  });

  it('that find the mail server away are kept, and tried again a minute later', async () => {
    await office.close();
    const { id } = await submitted('Head tube');
    await manager.post(`/requests/${id}/return`, { why: 'Which end?' });
    const [row] = await until(async () => {
      const rows = await lab.records.query<{ id: string; mail_trouble: string; mail_tries: number }[]>(
        `select notice.id, mail_trouble, mail_tries from notice join person on person.id = person_id
         where email like 'colleague@%' and path = $1 and mail_trouble is not null`,
        [`/requests/${id}`],
      );
      return rows.length > 0 ? rows : null;
    });
    expect(row).toMatchObject({ mail_trouble: 'The mail server was not reached (ESOCKET).', mail_tries: 1 });
    const [{ s }] = await lab.records.query<[{ s: number }]>(
      `select extract(epoch from due_at - announced_at)::float8 as s from task_run
       where name = 'send-notice' and payload->>'noticeId' = $1 and dispatched_at is null`,
      [row!.id],
    );
    expect(s).toBeCloseTo(60, 3);
  });
});

describe('webhooks', () => {
  const receiver = new Receiver();
  let hook: WebhookView;
  let url: string;

  beforeAll(async () => {
    url = await receiver.open();
    hook = (await manager.post<WebhookView>('/webhooks', { url, kinds: ['request/submitted'] })).body;
  });
  afterAll(() => receiver.close());

  async function log(): Promise<DeliveryView[]> {
    return (await manager.get<DeliveryView[]>(`/webhooks/${hook.id}/deliveries`)).body;
  }

  it('are the manager’s, and lead to https or to this machine', async () => {
    expect((await requester.get('/webhooks')).status).toBe(403);
    const bad = await manager.post('/webhooks', { url: 'http://tickets.northmoor.example/', kinds: ['plan/dreamt'] });
    expect(bad.body.errors.map(({ field }: { field: string }) => field)).toEqual(['url', 'kinds']);
    const [listed] = (await manager.get<WebhookView[]>('/webhooks')).body;
    expect(listed).toEqual({ ...hook, secret: undefined });
    expect(hook.secret).toMatch(/^sign_[\w-]{43}$/);
  });

  it('are told of the kinds that they want, signed so that nobody else can have sent it', async () => {
    const { id } = await submitted('Crank arm');
    const [{ headers, body }] = (await until(async () => (receiver.got.length > 0 ? receiver.got : null))) as [
      Received,
    ];
    expect(JSON.parse(body)).toMatchObject({ kind: 'request/submitted', subject: { kind: 'request', id } });
    const [, t, v1] = /^t=(\d+),v1=([0-9a-f]{64})$/.exec(String(headers['webhook-signature']))!;
    expect(createHmac('sha256', hook.secret!).update(`${t}.${body}`).digest('hex')).toBe(v1);
    expect(Math.abs(labClock.nowMs() / 1_000 - Number(t))).toBeLessThan(10);
    expect(headers['webhook-id']).toBe(JSON.parse(body).id);
    const record = await manager.get(`/record?subject=${id}`);
    expect(JSON.stringify(record.body)).toContain('request/submitted');
    expect((await until(async () => (await log()).filter(({ state }) => state === 'delivered')))[0]).toMatchObject({
      ...{ kind: 'request/submitted', tries: 1, lastStatus: 204, trouble: null, nextTryAt: null },
    });
    await readyRequest(bench); // accepted, arrived and ready are kinds that nobody asked for, or one more submitted
    await until(async () => receiver.got.length === 2);
  });

  it('get it again after a failure, under the same id, and a redirect is a failure', async () => {
    receiver.answers = [500, 302, 200];
    const before = receiver.got.length;
    await manager.post(`/webhooks/${hook.id}/try`);
    await until(async () => receiver.got.length === before + 3);
    const tries = receiver.got.slice(before);
    expect(new Set(tries.map(({ headers }) => headers['webhook-id'])).size).toBe(1);
    expect(new Set(tries.map(({ body }) => body)).size).toBe(1);
    const [newest] = await until(async () => {
      const rows = await log();
      return rows[0]!.state === 'delivered' ? rows : null;
    });
    expect(newest).toMatchObject({ kind: 'webhook/tried', tries: 3, lastStatus: 200, trouble: null });
  }, 20_000);

  it('that cannot be reached say so in the log, and can be tried again when they were given up', async () => {
    receiver.answers = [503];
    const { body } = await manager.post<{ deliveryId: string }>(`/webhooks/${hook.id}/try`);
    await lab.records.query('update webhook_delivery set tries = 8 where id = $1', [body.deliveryId]);
    await until(async () => (await log())[0]!.tries >= 8);
    const [row] = await until(async () => {
      const rows = await log();
      return rows[0]!.state === 'failed' ? rows : null;
    });
    expect(row).toMatchObject({ lastStatus: 503, trouble: 'The receiver answered with 503.', nextTryAt: null });
    expect((await manager.get<WebhookView[]>('/webhooks')).body[0]!.lastState).toBe('failed');
    const { parts } = (await manager.get<StatusView>('/status')).body;
    expect(parts.find(({ part }) => part === 'other programs')).toMatchObject({ state: 'trouble' });
    receiver.answers = [200];
    const again = `/webhooks/${hook.id}/deliveries/${body.deliveryId}/again`;
    expect((await manager.post(again)).status).toBe(204);
    await until(async () => (await log())[0]!.state === 'delivered');
    expect((await manager.post(again)).body.type).toBe('/problems/delivery/not-failed');
  }, 20_000);

  it('do not lead into private networks unless a setting says so, whatever the name or the spelling', async () => {
    const to = (address: string) => postMessage({ url: address, body: '{}', headers: {} }, false);
    const { port } = new URL(url);
    const inside = [
      `http://127.0.0.1:${port}/`,
      `http://localhost:${port}/`,
      `http://0x7f.1:${port}/`,
      `http://[::1]:${port}/`,
    ];
    const before = receiver.got.length;
    for (const address of [...inside, `http://[::ffff:127.0.0.1]:${port}/`, 'https://169.254.169.254/'])
      expect(await to(address)).toMatchObject({
        status: null,
        trouble: expect.stringContaining('WEBHOOKS_TO_PRIVATE'),
      });
    expect(receiver.got).toHaveLength(before);
  });

  it('end when the manager ends them, and the record knows', async () => {
    const before = receiver.got.length;
    expect((await manager.delete(`/webhooks/${hook.id}`)).status).toBe(204);
    expect((await manager.delete(`/webhooks/${hook.id}`)).status).toBe(404);
    await submitted('Bottle cage');
    const kinds = (await manager.get(`/record?subject=${hook.id}`)).body.rows.map(({ kind }: { kind: string }) => kind);
    expect(kinds).toEqual(['webhook/ended', 'webhook/added']);
    const [{ n }] = await lab.records.query<[{ n: number }]>(
      "select count(*)::int as n from webhook_delivery where announced_at > $1::timestamptz - interval '1 second' and state = 'waiting'",
      [labClock.now()],
    );
    expect([n, receiver.got.length]).toEqual([0, before]);
  });
});

describe('what happens at the bench', () => {
  it('is told to the managers when a job is blocked, and to the technician when it can be taken again or is aborted', async () => {
    await readyRequest(bench, 'Seat stay');
    const { body } = await until(async () => {
      const taken = await bench.technician.post<JobView>('/bench/take', {});
      return taken.status === 200 && taken;
    }, 30_000);
    const told = async (client: Client) => (await noticesOf(client)).rows.map(({ subject }) => subject);
    expect(await told(bench.technician)).toEqual([]);
    await bench.technician.post(`/jobs/${body.id}/block`, { why: 'The jaws slip.' });
    expect(await told(manager)).toContain(`${body.reference} is blocked`);
    // Nothing is broken, so that the planner may have given it a place again already.
    await manager.post(`/jobs/${body.id}/unblock`, { why: 'Try it with the coarse faces.' });
    expect(await told(bench.technician)).toEqual([`${body.reference} can be taken again`]);
    await manager.post(`/jobs/${body.id}/abort`, { why: 'The team has found another way.' });
    const [newest] = (await noticesOf(bench.technician)).rows;
    expect(newest).toMatchObject({ subject: `${body.reference} was aborted`, path: `/bench/${body.id}` });
    expect(newest!.sentence).toContain('The team has found another way.');
  }, 60_000);
});

describe('what retention forgets', () => {
  const count = async (table: string) =>
    (await lab.records.query<[{ n: number }]>(`select count(*)::int as n from ${table}`))[0].n;

  it('is what the settings say, and never the record', async () => {
    const { body, headers } = await manager.get('/settings');
    const { version: _, demo: __, ...settings } = body;
    const put = (retention: object) =>
      manager.put('/settings', { ...settings, retention }, { headers: { 'if-match': headers.get('etag')! } });
    expect((await put({ ...settings.retention, noticesMonths: 0 })).body.errors[0]).toMatchObject({
      field: 'retention.noticesMonths',
    });
    expect((await put({ ...settings.retention, noticesMonths: 2 })).status).toBe(200);
    const monthMs = 31 * 86_400_000;
    const before = { notices: await count('notice'), events: await count('record_event') };
    expect(before.notices).toBeGreaterThan(5);
    expect((await tidyUp(lab.records, labClock.nowMs() + monthMs)).notices).toBe(0);
    expect((await tidyUp(lab.records, labClock.nowMs() + 3 * monthMs)).notices).toBe(before.notices);
    expect(await count('record_event')).toBe(before.events);
  });

  it('is never what was written a moment ago, however far ahead the clock of the lab was set', async () => {
    const tables = ['session', 'task_run', 'idempotency_key', 'sign_in_attempt', 'fact_change'];
    await lab.visitor().post('/session', { email: 'nobody@northmoor.example', password: 'a guess' });
    await requester.post('/notices/read-all', {}, { headers: { 'Idempotency-Key': randomUUID() } });
    const before = await Promise.all(tables.map(count));
    expect(Math.min(...before)).toBeGreaterThan(0);
    await tidyUp(lab.records, labClock.nowMs() + 3_650 * 86_400_000);
    expect(await Promise.all(tables.map(count))).toEqual(before);
  });
});
