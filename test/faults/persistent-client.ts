import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { Client } from '../support/client.js';
import type { Answer } from '../support/client.js';

const GIVE_UP_AFTER_MS = 60_000;
const WAITS = ['/problems/idempotency-key/at-work', '/problems/database/busy', '/problems/database/unavailable'];

/** What became of a POST in the end. `done` means that the lab has said so, be it without its answer. */
export type Outcome =
  | { state: 'done'; answer: Answer<any> | null }
  | { state: 'refused'; answer: Answer<any> }
  | { state: 'never answered' };

/**
 * Asks as a good client does: with one Idempotency-Key for all tries of one thing, and on to the next process when one does
 * not answer.
 */
export class PersistentClient {
  private clients: Client[] = [];
  private turn = 0;

  constructor(
    private readonly baseUrls: string[],
    private readonly email: string,
    private readonly password: string,
  ) {}

  post(path: string, body: unknown, headers: Record<string, string> = {}): Promise<Outcome> {
    return this.send('POST', path, body, { ...headers, 'idempotency-key': randomUUID() });
  }

  put(path: string, body: unknown): Promise<Outcome> {
    return this.send('PUT', path, body, {});
  }

  /** @throws Error when nobody answers, or refuses to show it */
  async get<Body>(path: string): Promise<Body> {
    const outcome = await this.send('GET', path, undefined, {});
    if (outcome.state === 'done' && outcome.answer) return outcome.answer.body as Body;
    throw new Error(`GET ${path}: ${outcome.state}`);
  }

  private async send(method: string, path: string, body: unknown, headers: Record<string, string>): Promise<Outcome> {
    const end = Date.now() + GIVE_UP_AFTER_MS;
    while (Date.now() < end) {
      const answer = await this.tryOnce(method, path, body, headers).catch(() => null);
      if (answer && answer.status < 300) return { state: 'done', answer };
      if (answer?.body?.type === '/problems/idempotency-key/done-already') return { state: 'done', answer: null };
      if (answer && answer.status < 500 && ![401, 429].includes(answer.status) && !WAITS.includes(answer.body?.type))
        return { state: 'refused', answer };
      await pause(100);
    }
    return { state: 'never answered' };
  }

  private async tryOnce(
    method: string,
    path: string,
    body: unknown,
    headers: Record<string, string>,
  ): Promise<Answer<any>> {
    const client = await this.next();
    const answer = await client.send(method, path, body, { headers });
    if (answer.status === 401) this.clients = [];
    return answer;
  }

  /** Signs in where it is not, and takes turns between the processes; the session holds at all of them. */
  private async next(): Promise<Client> {
    if (this.clients.length === 0) {
      const first = new Client(this.baseUrls[this.turn++ % this.baseUrls.length]!);
      await first.signIn(this.email, this.password);
      this.clients = this.baseUrls.map((url) => first.at(url));
    }
    return this.clients[this.turn++ % this.clients.length]!;
  }
}
