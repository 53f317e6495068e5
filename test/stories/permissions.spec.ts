import { randomUUID } from 'node:crypto';
import type { Endpoint } from '#apps/api/src/platform/endpoints.js';
import { PERMISSIONS, permissionsOf } from '#apps/api/src/platform/permissions.js';
import type { Role } from '#libs/contract/src/index.js';
import type { Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';

const ROLES: Role[] = ['requester', 'technician', 'manager', 'auditor'];
/** Ways in and out: they would end the very sessions that are used here, or refuse whoever does not come in by them. */
const DOORS = ['POST /session', 'DELETE /session', 'GET /session/sign-on/back'];

/** The same lab for all, so that this file costs one start. */
describe('every endpoint of the API', () => {
  let lab: Lab;
  const clients = new Map<Role, Client>();
  let endpoints: Endpoint[];

  beforeAll(async () => {
    lab = await startLab({ worker: false });
    for (const role of ROLES) clients.set(role, await lab.signIn(role));
    endpoints = lab.endpoints.filter(
      ({ method, path }) => !path.startsWith('/health') && !DOORS.includes(`${method} ${path}`),
    );
  });
  afterAll(() => lab.stop());

  /** Asks with ids of nothing and an empty body: enough to get past the door, too little to do anything. */
  async function call(client: Client, { method, path }: Endpoint): Promise<number> {
    const abort = new AbortController();
    const filled = path.replace(/:\w+/g, () => randomUUID());
    const body = ['GET', 'DELETE'].includes(method)
      ? {}
      : { body: '{}', headers: { 'content-type': 'application/json' } };
    const { status } = await client.fetch(filled, { method, signal: abort.signal, redirect: 'manual', ...body });
    abort.abort(); // a stream of events would never end
    return status;
  }

  it('says who may use it', () => {
    expect(endpoints.length).toBeGreaterThan(20);
    expect(endpoints.filter(({ access }) => access === undefined)).toEqual([]);
  });

  it('is closed to who has not signed in, unless it is open to everybody', async () => {
    const wrong: string[] = [];
    for (const endpoint of endpoints) {
      const status = await call(lab.visitor(), endpoint);
      if ((status === 401) === (endpoint.access === 'everybody'))
        wrong.push(`${endpoint.method} ${endpoint.path} answers ${status}`);
    }
    expect(wrong).toEqual([]);
  });

  it.each(ROLES)('opens to a %s exactly where its permissions say so, and never breaks', async (role) => {
    const mine = permissionsOf([role]);
    const wrong: string[] = [];
    for (const endpoint of endpoints) {
      const status = await call(clients.get(role)!, endpoint);
      const may = endpoint.access === 'everybody' || endpoint.access!.some((permission) => mine.has(permission));
      if ((status === 403) === may || status >= 500)
        wrong.push(`${endpoint.method} ${endpoint.path} answers ${status}`);
    }
    expect(wrong).toEqual([]);
  });

  it('is asked for by a permission that somebody uses', () => {
    const used = new Set(endpoints.flatMap(({ access }) => (access === 'everybody' ? [] : access!)));
    expect(Object.keys(PERMISSIONS).filter((permission) => !used.has(permission as never))).toEqual([]);
  });
});
