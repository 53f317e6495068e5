import { jest } from '@jest/globals';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Provider } from 'oidc-provider';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';

/** Goes from redirect to redirect as a browser would, keeping the cookies of each host. */
class Browser {
  private readonly jars = new Map<string, Map<string, string>>();

  async open(address: string, init: RequestInit = {}): Promise<{ status: number; url: URL; body: string }> {
    let [url, options] = [new URL(address), init];
    for (let hops = 0; hops < 15; hops++) {
      const response = await fetch(url, {
        ...options,
        redirect: 'manual',
        headers: { ...(options.headers as object), cookie: this.cookies(url) },
      });
      this.keep(url, response.headers.getSetCookie());
      const next = response.headers.get('location');
      if (next === null) return { status: response.status, url, body: await response.text() };
      [url, options] = [new URL(next, url), {}];
    }
    throw new Error('It went round in circles.');
  }

  private cookies({ host }: URL): string {
    return [...(this.jars.get(host) ?? [])].map(([name, value]) => `${name}=${value}`).join('; ');
  }

  private keep({ host }: URL, set: string[]): void {
    const jar = this.jars.get(host) ?? new Map<string, string>();
    this.jars.set(host, jar);
    for (const [name, value] of set.map((one) => one.split(';')[0]!.split(/=(.*)/s))) jar.set(name!, value!);
  }
}

describe('single sign-on with a provider of another make', () => {
  let provider: Server;
  let lab: Lab;
  let publicUrl: string;
  let issuer: string;

  beforeAll(async () => {
    // The provider warns that it is set up for a spec.
    jest.spyOn(console, 'warn').mockImplementation(() => {});
    jest.spyOn(console, 'info').mockImplementation(() => {});
    provider = createServer();
    issuer = await listening(provider);
    publicUrl = await freeAddress();
    const accounts: Record<string, object> = {
      'subject-1': { email: 'Manager@northmoor.example', email_verified: true },
      'subject-2': { email: 'technician@northmoor.example', email_verified: false },
      'subject-3': { email: 'stranger@northmoor.example', email_verified: true },
    };
    const oidc = new Provider(issuer, {
      clients: [
        {
          client_id: 'lab',
          client_secret: 'lab-secret-of-the-spec',
          redirect_uris: [`${publicUrl}/api/v1/session/sign-on/back`],
        },
      ],
      claims: { openid: ['sub'], email: ['email', 'email_verified'] },
      conformIdTokenClaims: false,
      findAccount: (_: unknown, id: string) => ({ accountId: id, claims: () => ({ sub: id, ...accounts[id] }) }),
      cookies: { keys: ['a key of the spec'] },
    });
    provider.on('request', oidc.callback());
    const config = {
      signOnIssuer: issuer,
      signOnClientId: 'lab',
      signOnClientSecret: 'lab-secret-of-the-spec',
      publicUrl,
      port: Number(new URL(publicUrl).port),
    };
    lab = await startLab({ worker: false, config });
  }, 30_000);
  afterAll(async () => {
    await lab.stop();
    provider.close();
    provider.closeAllConnections();
  });

  async function signOn(browser: Browser, subject: string): Promise<{ status: number; url: URL; body: string }> {
    const login = await browser.open(`${publicUrl}/api/v1/session/sign-on`);
    const form = { method: 'POST', headers: { 'content-type': 'application/x-www-form-urlencoded' } };
    const consent = await browser.open(login.url.href, { ...form, body: `prompt=login&login=${subject}&password=any` });
    return consent.url.origin === issuer
      ? browser.open(consent.url.href, { ...form, body: 'prompt=consent' })
      : consent;
  }

  async function personIn(browser: Browser): Promise<unknown> {
    return JSON.parse((await browser.open(`${publicUrl}/api/v1/session`)).body).person;
  }

  it('lets somebody in whose verified address the lab knows, and knows them again by their subject', async () => {
    const first = new Browser();
    expect((await signOn(first, 'subject-1')).url.href).toBe(`${publicUrl}/`);
    expect(await personIn(first)).toMatchObject({ email: 'manager@northmoor.example', roles: ['manager'] });

    await lab.records.query(
      `update person set email = 'renamed@northmoor.example' where email = 'manager@northmoor.example'`,
    );
    const second = new Browser();
    await signOn(second, 'subject-1');
    expect(await personIn(second)).toMatchObject({ email: 'renamed@northmoor.example', roles: ['manager'] });
  });

  it.each([
    ['an address that the provider has not verified', 'subject-2'],
    ['an address that the lab does not know', 'subject-3'],
  ])('does not let %s in', async (_, subject) => {
    const browser = new Browser();
    const { status, body } = await signOn(browser, subject);
    expect(status).toBe(401);
    expect(JSON.parse(body).type).toBe('/problems/sign-on/wrong-credentials');
    expect((await browser.open(`${publicUrl}/api/v1/session`)).status).toBe(401);
  });

  it('refuses an answer that another browser asked for', async () => {
    const { status, body } = await new Browser().open(
      `${publicUrl}/api/v1/session/sign-on/back?code=stolen&state=stolen`,
    );
    expect(status).toBe(401);
    expect(JSON.parse(body).detail).toBe('This sign-on was not begun in this browser. Begin again.');
  });

  it('is offered on the sign-in page', async () => {
    expect(JSON.parse((await new Browser().open(`${publicUrl}/api/v1/session/ways`)).body)).toEqual({ signOn: true });
  });
});

async function listening(server: Server): Promise<string> {
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

async function freeAddress(): Promise<string> {
  const probe = createServer();
  const address = await listening(probe);
  probe.close();
  return address;
}
