import { randomUUID } from 'node:crypto';
import type { StatusView } from '#libs/contract/src/index.js';
import { announce } from '#libs/records/src/index.js';
import type { Client } from '../support/client.js';
import { startLab, TEST_PASSWORD, TEST_TEAM } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { until } from '../support/until.js';

describe('the platform', () => {
  let lab: Lab;
  let manager: Client;

  beforeAll(async () => {
    lab = await startLab();
    manager = await lab.signIn('manager');
  });
  afterAll(() => lab.stop());

  describe('lets people in', () => {
    it('with their password, tells who they are, and out again', async () => {
      const requester = await lab.signIn('requester');
      const { body } = await requester.get('/session');
      expect(body).toMatchObject({
        person: { email: 'requester@northmoor.example', roles: ['requester'], teams: [TEST_TEAM] },
        demo: false,
      });
      expect(body.permissions).toContain('submit-request');
      expect(body.permissions).not.toContain('edit-people');
      expect((await requester.delete('/session')).status).toBe(204);
      expect((await requester.get('/session')).status).toBe(401);
    });

    it('and takes back a stolen cookie: a session that was ended is worth nothing', async () => {
      const first = await lab.signIn('auditor');
      const second = await lab.signIn('auditor');
      expect((await second.delete('/session?all=true')).status).toBe(204);
      expect((await first.get('/session')).status).toBe(401);
    });

    it('in the same words for a wrong password and an unknown address', async () => {
      const wrong = await lab
        .visitor()
        .post('/session', { email: 'manager@northmoor.example', password: 'not this one' });
      const unknown = await lab
        .visitor()
        .post('/session', { email: 'nobody@northmoor.example', password: 'not this one' });
      expect(wrong.status).toBe(401);
      expect(unknown.body).toEqual(wrong.body);
    });

    it('not after ten wrong tries, not even with the right password', async () => {
      const signIn = (password: string) =>
        lab.visitor().post('/session', { email: 'technician@northmoor.example', password });
      for (let tries = 0; tries < 10; tries++) expect((await signIn('not this one')).status).toBe(401);
      const { status, body } = await signIn(TEST_PASSWORD);
      expect(status).toBe(429);
      expect(body.detail).toBe('Too many tries to sign in. Wait 15 minutes.');
      await lab.records.query('delete from sign_in_attempt');
      expect((await signIn(TEST_PASSWORD)).status).toBe(200);
    });

    it('keeping neither passwords nor tokens readable', async () => {
      const kept = JSON.stringify([
        await lab.records.query('select * from person'),
        await lab.records.query('select * from session'),
      ]);
      expect(kept).not.toContain(TEST_PASSWORD);
      expect(kept).toContain('$argon2id$');
    });

    it('with a cookie that scripts cannot read and other sites do not get', async () => {
      const response = await lab.visitor().fetch('/session', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ email: 'manager@northmoor.example', password: TEST_PASSWORD }),
      });
      expect(response.headers.getSetCookie()[0]).toMatch(
        /^lab-session=[\w-]{43}; Max-Age=28800; Path=\/; .*HttpOnly; SameSite=Strict$/,
      );
    });
  });

  describe('refuses', () => {
    it('what is not for a role', async () => {
      const requester = await lab.signIn('requester');
      const { status, body } = await requester.get('/people');
      expect(status).toBe(403);
      expect(body).toMatchObject({ type: '/problems/access/forbidden', status: 403, instance: '/api/v1/people' });
    });

    it.each([
      ['without our own header', { 'x-lab-page': undefined }],
      ['from another site', { 'sec-fetch-site': 'cross-site' }],
      ['with the origin of another site', { origin: 'https://elsewhere.example' }],
    ])('a change %s', async (_, strange) => {
      const plain = Object.fromEntries(Object.entries(strange).filter(([, value]) => value !== undefined)) as Record<
        string,
        string
      >;
      const headers: Record<string, string> = { 'content-type': 'application/json', ...plain };
      if ('x-lab-page' in strange) delete (headers as Record<string, unknown>)['x-lab-page'];
      const bare = await fetch(`${lab.baseUrl}/api/v1/session`, { method: 'POST', headers, body: '{}' });
      expect(bare.status).toBe(403);
    });

    it('bad input by field, with what was found, what is allowed and the unit', async () => {
      const { status, body } = await manager.post('/people', {
        name: '',
        email: 'no address',
        roles: ['boss'],
        teamIds: [],
        age: 40,
      });
      expect(status).toBe(422);
      expect(body.type).toBe('/problems/input/invalid');
      expect(body.errors.map(({ field, allowed }: Record<string, string>) => [field, allowed])).toEqual([
        ['age', 'nothing; there is no such field'],
        ['name', 'text of 1 to 120 characters'],
        ['email', 'a mail address'],
        ['roles', '1 to 4 of: one of requester, technician, manager, auditor'],
      ]);
    });

    it.each([
      ['no JSON', '{"name":', 400],
      ['too much', JSON.stringify({ name: 'x'.repeat(1_100_000) }), 413],
    ])('a body with %s', async (_, text, expected) => {
      const { status, body } = await manager.send<any>('POST', '/people', text, {
        headers: { 'content-type': 'application/json' },
      });
      expect(status).toBe(expected);
      expect(JSON.stringify(body)).not.toMatch(/node_modules|at .*\.js/);
    });

    it('ids that are none, and things that are not there', async () => {
      expect((await manager.get('/people/1')).status).toBe(400);
      expect((await manager.get(`/people/${randomUUID()}`)).body).toMatchObject({
        status: 404,
        detail: 'There is no such person.',
      });
      expect((await manager.get('/nowhere')).status).toBe(404);
    });

    it('an edit without or with a stale version', async () => {
      const [{ id, version }] = (await manager.get('/people')).body.rows;
      expect((await manager.patch(`/people/${id}`, { name: 'New name' })).status).toBe(428);
      const first = await manager.patch(
        `/people/${id}`,
        { name: 'New name' },
        { headers: { 'if-match': `"${version}"` } },
      );
      expect(first.status).toBe(200);
      expect(first.headers.get('etag')).toBe(`"${version + 1}"`);
      const second = await manager.patch(
        `/people/${id}`,
        { name: 'Other name' },
        { headers: { 'if-match': `"${version}"` } },
      );
      expect(second.body).toMatchObject({ status: 412, facts: { version: version + 1 } });
    });
  });

  describe('does a POST with a key once', () => {
    const keyed = (key: string) => ({ headers: { 'idempotency-key': key } });

    it('and gives its retry the same answer', async () => {
      const [first, second] = [
        await manager.post('/teams', { name: 'Wheels' }, keyed('make-wheels')),
        await manager.post('/teams', { name: 'Wheels' }, keyed('make-wheels')),
      ];
      expect(first.status).toBe(201);
      expect(second.body).toEqual(first.body);
      expect(second.headers.get('idempotency-replayed')).toBe('true');
    });

    it('also when twenty come at once', async () => {
      const answers = await Promise.all(
        Array.from({ length: 20 }, () => manager.post('/teams', { name: 'Soft goods' }, keyed('make-soft-goods'))),
      );
      expect(new Set(answers.map(({ status, body }) => `${status} ${body.id}`)).size).toBe(1);
      const { rows } = (await manager.get('/teams')).body;
      expect(rows.filter(({ name }: { name: string }) => name === 'Soft goods')).toHaveLength(1);
    });

    it('also when the first answer was lost with the process that should have given it', async () => {
      await manager.post('/teams', { name: 'Lights' }, keyed('make-lights'));
      await lab.records.query(`update idempotency_key set status = null, body = null where key = 'make-lights'`);
      const again = await manager.post('/teams', { name: 'Lights' }, keyed('make-lights'));
      expect(again.body).toMatchObject({ status: 409, type: '/problems/idempotency-key/done-already' });
    });

    it('and again when the process died before anything was done', async () => {
      await lab.records.query(
        `update idempotency_key set key = 'make-bells', done = false, status = null, claimed_at = now() - interval '6 seconds'
         where key = 'make-lights'`,
      );
      await lab.records.query(`update team set name = 'Bells' where name = 'Lights'`);
      expect((await manager.post('/teams', { name: 'Lights' }, keyed('make-bells'))).status).toBe(201);
    });

    it('and by one of the two when a retry takes over from a first that is only slow', async () => {
      const slow = lab.records.createQueryRunner();
      await slow.startTransaction();
      await slow.query('lock table team in share mode'); // both wait for it, and go on together
      const first = manager.post('/teams', { name: 'Baskets' }, keyed('make-baskets'));
      await until(
        async () =>
          (await lab.records.query<unknown[]>(`select 1 from idempotency_key where key = 'make-baskets'`)).length,
      );
      await lab.records.query(
        `update idempotency_key set claimed_at = now() - interval '6 seconds' where key = 'make-baskets'`,
      );
      const second = manager.post('/teams', { name: 'Baskets' }, keyed('make-baskets'));
      await new Promise((resolve) => setTimeout(resolve, 300));
      await slow.commitTransaction();
      await slow.release();
      expect((await Promise.all([first, second])).map(({ status }) => status).sort()).toEqual([201, 409]);
    });

    it('but refuses the key for something else, and frees it when the first was refused', async () => {
      expect((await manager.post('/teams', { name: 'Tents' }, keyed('make-wheels'))).body.type).toBe(
        '/problems/idempotency-key/other-request',
      );
      expect((await manager.post('/teams', { name: '' }, keyed('make-tents'))).status).toBe(422);
      expect((await manager.post('/teams', { name: 'Wheels' }, keyed('make-again'))).body).toMatchObject({
        status: 409,
        type: '/problems/team/name-taken',
      });
      expect((await manager.post('/teams', { name: 'Tents' }, keyed('make-again'))).status).toBe(201);
    });
  });

  describe('teams', () => {
    it('are the same to people when their names differ in case or blanks only', async () => {
      const { body: made } = await manager.post<any>('/teams', { name: '  Frame   fasteners ' });
      expect(made.name).toBe('Frame fasteners');
      for (const name of ['frame fasteners', 'FRAME FASTENERS', 'Framefasteners']) {
        const { status, body } = await manager.post<any>('/teams', { name });
        expect([status, body.type, body.detail]).toEqual([
          409,
          '/problems/team/name-taken',
          'There is a team named Frame fasteners already. Choose another name.',
        ]);
      }
    });

    it('get another name, also one that differs from their own in case only, but not that of another', async () => {
      const { body: made } = await manager.post<any>('/teams', { name: 'pedals' });
      const rename = (id: string, name: string) => manager.patch<any>(`/teams/${id}`, { name });
      expect((await rename(made.id, 'Pedals')).body).toEqual({ id: made.id, name: 'Pedals' });
      expect((await rename(made.id, 'frame FASTENERS')).status).toBe(409);
      expect((await rename(randomUUID(), 'Nobody')).body.type).toBe('/problems/team/unknown');
      const { body: event } = await manager.get<any>(`/record?subject=${made.id}`);
      expect(event.rows[0]).toMatchObject({ kind: 'team/renamed', subjectId: made.id });
    });
  });

  it('never shows a refused password again', async () => {
    const secret = 'hunter2';
    const refusals = [
      await manager.put<any>('/own/password', { current: TEST_PASSWORD, next: secret }),
      await manager.post<any>('/people', {
        ...{ name: 'A', email: 'a@northmoor.example', roles: ['technician'], teamIds: [], password: secret },
      }),
      await lab.visitor().post<any>('/session', { email: 'manager@northmoor.example', password: secret.repeat(50) }),
      await lab.visitor().post<any>('/session', { email: 'manager@northmoor.example', password: ['hunter2'] }),
      await lab.visitor().post<any>('/session', { email: 'manager@northmoor.example', passwort: secret }),
    ];
    for (const { status, body } of refusals) {
      expect(status).toBe(422);
      expect(JSON.stringify(body)).not.toContain('hunter2');
    }
    expect(refusals[0]!.body.errors).toEqual([
      {
        ...{ field: 'next', found: '7', allowed: '12 to 128', unit: 'characters' },
        sentence: 'next is 7 characters; allowed is 12 to 128 characters.',
      },
    ]);
  });

  it('lets a program in with a token, within what the token names', async () => {
    const { body } = await manager.post('/own/tokens', { name: 'dashboard', permissions: ['see-people'], days: 1 });
    const program = { authorization: `Bearer ${body.token}` };
    const ask = (path: string, init: RequestInit = {}) =>
      fetch(`${lab.baseUrl}/api/v1${path}`, { ...init, headers: { ...program, 'content-type': 'application/json' } });
    expect((await ask('/people')).status).toBe(200);
    expect((await ask('/settings')).status).toBe(403);
    expect(
      (
        await ask('/own/tokens', {
          method: 'POST',
          body: JSON.stringify({ name: 'another', permissions: ['see-people'], days: 1 }),
        })
      ).status,
    ).toBe(403);
    await manager.delete(`/own/tokens/${body.id}`);
    expect((await ask('/people')).status).toBe(401);
  });

  it('tells every open page of a change without being asked again', async () => {
    const abort = new AbortController();
    const stream = await manager.fetch('/live', { signal: abort.signal });
    const reader = stream.body!.pipeThrough(new TextDecoderStream()).getReader();
    await manager.post('/teams', { name: 'Components' });
    const began = Date.now();
    let heard = '';
    while (!heard.includes('"topic":"people"')) heard += (await reader.read()).value ?? '';
    console.info(`a change was heard after ${Date.now() - began} ms`);
    abort.abort();
  });

  it('closes although pages are open', async () => {
    const other = await startLab({ worker: false });
    const stream = await (await other.signIn('auditor')).fetch('/live');
    await other.stop();
    expect(await stream.text()).toContain('retry: 1000');
  });

  it('does announced work once, merges what has the same key, and keeps its state', async () => {
    const ids = await lab.records.transaction(async (entities) => [
      await announce(entities, 'tidy', {}, { key: 'once' }),
      await announce(entities, 'tidy', {}, { key: 'once' }),
    ]);
    const done = await until(async () => {
      const views = await Promise.all(ids.map(async (id) => (await manager.get(`/tasks/${id}`)).body));
      return views.every(({ state }) => state === 'done') ? views : null;
    });
    expect(done.map(({ progressPct }) => progressPct)).toEqual([100, 100]);
    expect(await lab.records.query('select attempts from task_run where id = any($1) order by seq', [ids])).toEqual([
      { attempts: 0 },
      { attempts: 1 },
    ]);
  });

  it('keeps settings, and refuses figures that a core does not know', async () => {
    const { body, headers } = await manager.get('/settings');
    const { version: _, demo: __, ...settings } = body;
    const put = (changed: object) =>
      manager.put('/settings', { ...settings, ...changed }, { headers: { 'if-match': headers.get('etag')! } });
    expect((await put({ timeZone: 'Mars/Olympus' })).body.errors[0]).toMatchObject({
      field: 'timeZone',
      allowed: 'an IANA time zone, e.g. Europe/London',
    });
    expect((await put({ objective: { ...settings.objective, perLateMin: -1 } })).body.errors[0]).toMatchObject({
      field: 'objective.perLateMin',
      found: '-1',
    });
    expect(
      (await put({ name: 'Northmoor test lab', shifts: [{ weekday: 1, from: '06:00', to: '14:00', name: 'early' }] }))
        .body,
    ).toMatchObject({ name: 'Northmoor test lab', version: 1 });
    expect((await put({ name: 'Another name' })).status).toBe(412);
  });

  it('keeps the roster: nobody is at work twice at a time', async () => {
    const people = (await manager.get('/people')).body.rows as { id: string; roles: string[] }[];
    const personId = people.find(({ roles }) => roles.includes('technician'))!.id;
    const shift = { personId, startsAt: '2026-11-26T06:00:00Z', endsAt: '2026-11-26T14:00:00Z' };
    expect((await manager.post('/roster', shift)).status).toBe(201);
    expect((await manager.post('/roster', { ...shift, startsAt: '2026-11-26T13:59:00Z' })).body).toMatchObject({
      status: 409,
      type: '/problems/database/overlap',
    });
    expect(
      (await manager.post('/roster', { ...shift, startsAt: '2026-11-26T14:00:00Z', endsAt: '2026-11-26T22:00:00Z' }))
        .status,
    ).toBe(201);
    expect((await manager.post('/roster', { ...shift, endsAt: '2026-11-26T06:00:00Z' })).body.errors[0].field).toBe(
      'endsAt',
    );
    expect((await manager.get('/roster?from=2026-11-26T00:00:00Z&to=2026-11-27T00:00:00Z')).body.shifts).toHaveLength(
      2,
    );
  });

  it('says how it is, to those who watch over it', async () => {
    const plain = async (path: string) => (await fetch(`${lab.baseUrl}${path}`)).text();
    expect(await plain('/health/live')).toBe('{"alive":true}');
    expect(await plain('/health/ready')).toBe('{"ready":true,"database":"ok"}');
    expect(await plain('/metrics')).toContain('lab_tasks_waiting');
    const parts = (await manager.get<StatusView>('/status')).body.parts.map(({ part, state }) => [part, state]);
    expect(parts).toEqual(
      ['queue', 'work', 'versions', 'failures', 'mails', 'other programs'].map((part) => [part, 'well']),
    );
    const described = JSON.parse(await plain('/api/v1/openapi.json'));
    expect(described.paths['/api/v1/session'].post.responses).toHaveProperty('422');
  });
});
