import type { FeedKeyView, SessionView, TokenView, WebhookView } from '#libs/contract/src/index.js';
import type { Answer } from '../support/client.js';
import { startLab, TEST_PASSWORD } from '../support/lab.js';
import type { Lab } from '../support/lab.js';

let lab: Lab;

beforeAll(async () => {
  lab = await startLab({ worker: false });
});
afterAll(() => lab?.stop());
beforeEach(() => lab.records.query('delete from sign_in_attempt'));

const api = (path: string, init: RequestInit = {}) => fetch(`${lab.baseUrl}/api/v1${path}`, init);
const withToken = (token: string) => ({ headers: { authorization: `Bearer ${token}` } });

async function waysOf(who: string) {
  const client = await lab.signIn(who);
  const token = (
    await client.post<TokenView>('/own/tokens', { name: 'a', permissions: ['see-own', 'hear-changes'], days: 1 })
  ).body.token!;
  const { key } = (await client.post<FeedKeyView>('/feed-keys', { name: 'Phone' })).body;
  const { id } = (await client.get<SessionView>('/session')).body.person;
  return { client, token, key: key!, id };
}

/** What still opens: the other session, the token, the key. */
async function open({ client, token, key, id }: Awaited<ReturnType<typeof waysOf>>): Promise<boolean[]> {
  const answers = await Promise.all([
    client.get('/session'),
    api('/session', withToken(token)),
    api(`/feeds/people/${id}.ics?key=${key}`),
  ]);
  return answers.map(({ status }) => status === 200);
}

describe('a secret that is shown once', () => {
  it.each([
    ['a token', '/own/tokens', { name: 'a', permissions: ['see-own'], days: 1 }, 'token'],
    ['a key of feeds', '/feed-keys', { name: 'Phone' }, 'key'],
    ['the secret of a webhook', '/webhooks', { url: 'https://example.com/x', kinds: ['report/issued'] }, 'secret'],
  ] as const)('%s: no table has it, and a retry is told that it was done', async (_, path, body, field) => {
    const manager = await lab.signIn('manager');
    const keyed = { headers: { 'idempotency-key': `once-${field}` } };
    const made: Answer<any> = await manager.post<TokenView | FeedKeyView | WebhookView>(path, body, keyed);
    expect(made.status).toBe(201);
    const kept = await lab.records.query('select * from idempotency_key');
    expect(JSON.stringify(kept)).not.toContain(made.body[field]);
    expect((await manager.post<any>(path, body, keyed)).body).toMatchObject({
      status: 409,
      type: '/problems/idempotency-key/done-already',
    });
  });
});

describe('every way in of a person ends', () => {
  it('with a new password of their own, but for the session that set it', async () => {
    const ways = await waysOf('technician');
    expect(await open(ways)).toEqual([true, true, true]);
    const here = await lab.signIn('technician');
    const next = 'another password for tests';
    expect((await here.put('/own/password', { current: TEST_PASSWORD, next })).status).toBe(204);
    expect(await open(ways)).toEqual([false, false, false]);
    expect((await here.get('/session')).status).toBe(200);
    await here.put('/own/password', { current: next, next: TEST_PASSWORD });
  });

  it('with a password that the manager sets, and when the account is closed, for good', async () => {
    const manager = await lab.signIn('manager');
    for (const change of [{ password: TEST_PASSWORD }, { active: false }]) {
      const ways = await waysOf('technician');
      const edit = async (body: object) => {
        const version = (await manager.get<any>(`/people/${ways.id}`)).body.version;
        return manager.patch(`/people/${ways.id}`, body, { headers: { 'if-match': `"${version}"` } });
      };
      expect((await edit(change)).status).toBe(200);
      await edit({ active: true });
      expect(await open(ways)).toEqual([false, false, false]);
    }
  });

  it('when they end all', async () => {
    const ways = await waysOf('auditor');
    expect((await (await lab.signIn('auditor')).delete('/session?all=true')).status).toBe(204);
    expect(await open(ways)).toEqual([false, false, false]);
  });

  it('and with a token its stream, at the next sign of life', async () => {
    const { client, token } = await waysOf('auditor');
    const stream = await api('/live', withToken(token));
    const [{ id }] = (await client.get<TokenView[]>('/own/tokens')).body as [TokenView];
    await client.delete(`/own/tokens/${id}`);
    expect(await stream.text()).toContain('retry: 1000'); // it has an end
  }, 60_000);
});

describe('tries', () => {
  it('of one’s own password have the limit of the door', async () => {
    const client = await lab.signIn('requester');
    const guess = () => client.put<any>('/own/password', { current: 'not this one', next: 'a new one for tests' });
    for (let tries = 1; tries <= 10; tries++) expect((await guess()).status).toBe(422);
    expect((await guess()).status).toBe(429);
    expect((await client.put('/own/password', { current: TEST_PASSWORD, next: 'a new one for tests' })).status).toBe(
      429,
    );
  });

  it('that come all at once are looked at no more often than those that come in turn', async () => {
    const answers = await Promise.all(
      Array.from({ length: 50 }, () =>
        lab.visitor().post<any>('/session', { email: 'manager@northmoor.example', password: 'not this one' }),
      ),
    );
    const looked = answers.filter(({ status }) => status === 401);
    expect(looked.length).toBeLessThanOrEqual(10);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(50 - looked.length);
  });
});
