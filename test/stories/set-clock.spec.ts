import { jest } from '@jest/globals';
import { SetClock } from '#libs/calendar/src/index.js';
import type {
  FeedKeyView,
  ItemView,
  NoticesView,
  Page,
  RequestView,
  SessionView,
  WebhookView,
} from '#libs/contract/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { DEMO_PASSWORD } from '#seed/northmoor/people.js';
import type { Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { until } from '../support/until.js';
import { CELL_5KN } from './register-items.js';

jest.setTimeout(120_000);

/** A morning far from any day on which this runs; nothing of the demo lab lies so far from it. */
const clock = new SetClock(Date.parse('2040-02-28T09:30:00Z'));

/** Measured by the database between rows that it wrote itself. */
const MEASURED = ['api_token', 'fact_change', 'idempotency_key', 'session', 'sign_in_attempt', 'task_run'];

let lab: Lab;
let manager: Client;
let requester: Client;

beforeAll(async () => {
  lab = await startLab({ filled: 'demo', clock, config: { webhooksToPrivate: 'yes' } });
  manager = await lab.signIn('ruth.calloway@northmoor.example', DEMO_PASSWORD);
  requester = await lab.signIn('sam.whitlock@northmoor.example', DEMO_PASSWORD);
});
afterAll(() => lab?.stop());

const done = async <Body = any>(answer: Promise<{ status: number; body: Body }>): Promise<Body> => {
  const { status, body } = await answer;
  if (status >= 300) throw new Error(JSON.stringify(body));
  return body;
};

/** How far an instant lies from the lab's time, min. */
const minutesOff = (instant: string) => Math.abs(Date.parse(instant) - clock.nowMs()) / 60_000;

describe('a lab whose clock was set to another time', () => {
  it('shows that time on what people write', async () => {
    expect(minutesOff((await done<SessionView>(requester.get('/session'))).lab.now)).toBeLessThan(5);
    const { rows } = await done<Page<RequestView>>(requester.get('/requests'));
    const { id } = rows[0]!;
    await done(requester.post(`/requests/${id}/messages`, { body: 'The box is on its way.' }));
    const { messages } = await done<RequestView>(requester.get(`/requests/${id}`));
    expect(minutesOff(messages.at(-1)!.at)).toBeLessThan(5);
    const key = await done<FeedKeyView>(manager.post('/feed-keys', { name: 'Phone' }));
    expect(minutesOff(key.madeAt)).toBeLessThan(5);
    const hook = await done<WebhookView>(
      manager.post('/webhooks', { url: 'http://127.0.0.1:1/', kinds: ['item/calibrated'] }),
    );
    expect(minutesOff(hook.addedAt)).toBeLessThan(5);
    await done(manager.post(`/webhooks/${hook.id}/try`));
    const tried = await until(async () =>
      (await done(manager.get(`/webhooks/${hook.id}/deliveries`))).find(({ nextTryAt }: any) => nextTryAt),
    );
    expect([minutesOff(tried.announcedAt), minutesOff(tried.nextTryAt)].every((off) => off < 5)).toBe(true);
  });

  it('keeps no instant of the machine in any row but those that the database measures', async () => {
    const { id } = await done<ItemView>(manager.post('/items', { ...CELL_5KN, tag: 'LC-NEW' }));
    await done(
      manager.post(`/items/${id}/calibrations`, {
        ...{ standard: 'ISO 7500-1', certificateNumber: 'C-9', laboratory: 'Northmoor calibration', asFound: 'within' },
        performedAt: new Date(clock.nowMs() - 86_400_000).toISOString(),
        ranges: [{ direction: 'tension', className: '1', from: 5, to: 5000, unit: 'N' }],
      }),
    );
    await done(
      manager.post(`/items/${id}/nonconformity`, {
        what: 'It drifts.',
        since: new Date(clock.nowMs() - 3_600_000).toISOString(),
      }),
    );
    await done(manager.post('/methods', { data: METHODS[0]! }));
    await done(manager.send('POST', '/files?name=note.txt', 'A note', { headers: { 'content-type': 'text/plain' } }));
    const { teams, ...person } = {
      ...{ name: 'Nell Tarn', email: 'nell.tarn@northmoor.example', roles: ['technician'] },
      teams: [],
    };
    await done(manager.post('/people', { ...person, teamIds: teams }));
    const told = await done<NoticesView>(requester.get('/notices'));
    for (const notice of told.rows.slice(0, 1)) await done(requester.post(`/notices/${notice.id}/read`));
    await until(async () => (await manager.post('/trials', { name: 'What if' })).status < 300, 60_000);
    expect(await ofTheMachine()).toEqual([]);
  });
});

/** Columns in which an instant lies within a day of the machine's time. */
async function ofTheMachine(): Promise<string[]> {
  const columns = await lab.records.query<{ table: string; column: string }[]>(
    `select table_name as table, column_name as column from information_schema.columns
     where table_schema = 'public' and data_type like 'timestamp%' and table_name <> all($1) order by 1, 2`,
    [MEASURED],
  );
  const found: string[] = [];
  for (const { table, column } of columns) {
    const [{ there }] = await lab.records.query<[{ there: boolean }]>(
      `select exists (select 1 from "${table}" where "${column}" between now() - interval '1 day' and now() + interval '1 day') as there`,
    );
    if (there) found.push(`${table}.${column}`);
  }
  return found;
}
