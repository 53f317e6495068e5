import { DescribedAnswers, JSON_TYPES } from './described.js';

export interface Answer<Body> {
  status: number;
  body: Body;
  headers: Headers;
}

interface Extra {
  headers?: Record<string, string>;
}

let described: DescribedAnswers | undefined;

/**
 * Speaks to the API as the web page does: with its cookie, and the header that only our own page sends. Every answer in JSON has to be
 * as the API's description says.
 */
export class Client {
  private cookie = '';

  constructor(readonly baseUrl: string) {}

  async signIn(email: string, password: string): Promise<void> {
    const { status, body } = await this.post('/session', { email, password });
    if (status !== 200) throw new Error(`${email} was not let in: ${JSON.stringify(body)}`);
  }

  /** The same session at another process. */
  at(baseUrl: string): Client {
    const other = new Client(baseUrl);
    other.cookie = this.cookie;
    return other;
  }

  get<Body = any>(path: string, extra?: Extra): Promise<Answer<Body>> {
    return this.send('GET', path, undefined, extra);
  }

  post<Body = any>(path: string, body?: unknown, extra?: Extra): Promise<Answer<Body>> {
    return this.send('POST', path, body, extra);
  }

  put<Body = any>(path: string, body?: unknown, extra?: Extra): Promise<Answer<Body>> {
    return this.send('PUT', path, body, extra);
  }

  patch<Body = any>(path: string, body?: unknown, extra?: Extra): Promise<Answer<Body>> {
    return this.send('PATCH', path, body, extra);
  }

  delete<Body = any>(path: string, extra?: Extra): Promise<Answer<Body>> {
    return this.send('DELETE', path, undefined, extra);
  }

  /** @param path below `/api/v1`; objects are sent as JSON, text and bytes as they are */
  async send<Body>(method: string, path: string, body?: unknown, { headers = {} }: Extra = {}): Promise<Answer<Body>> {
    const raw = typeof body === 'string' || body instanceof Uint8Array;
    const type: Record<string, string> =
      body === undefined ? {} : { 'content-type': raw ? 'application/octet-stream' : 'application/json' };
    const response = await this.fetch(path, {
      method,
      headers: { ...type, ...headers },
      body: body === undefined ? null : raw ? (body as string) : JSON.stringify(body),
    });
    const text = await response.text();
    const { status } = response;
    const isJson = JSON_TYPES.test(response.headers.get('content-type') ?? '');
    const json: unknown = isJson && text ? JSON.parse(text) : undefined;
    if (isJson || text === '') {
      described ??= new DescribedAnswers();
      const flaws = described.flawsIn(method, path, status, json);
      if (flaws.length > 0) throw new Error(`The answer to ${method} ${path} is not as described: ${flaws.join('; ')}`);
    }
    return { status, headers: response.headers, body: (json ?? text) as Body };
  }

  /** The plain way, for streams and files. */
  async fetch(path: string, init: RequestInit = {}): Promise<Response> {
    const own = { 'x-lab-page': '1', ...(this.cookie ? { cookie: this.cookie } : {}) };
    const headers = { ...own, ...(init.headers as Record<string, string>) };
    const response = await fetch(`${this.baseUrl}/api/v1${path}`, { ...init, headers });
    const [set] = response.headers.getSetCookie();
    if (set) this.cookie = set.split(';')[0]!;
    return response;
  }
}
