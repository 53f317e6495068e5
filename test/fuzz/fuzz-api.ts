import { hashPassword } from '#apps/api/src/platform/sessions.service.js';
import type { Endpoint } from '#apps/api/src/platform/endpoints.js';
import { startWorker } from '#apps/worker/src/platform/start-worker.js';
import { PlanRepository } from '#libs/records/src/index.js';
import { Client } from '../support/client.js';
import { DescribedAnswers, JSON_TYPES } from '../support/described.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { until } from '../support/until.js';
import { examplesOf, placesOf } from './examples.js';
import { ACTORS, emailOf, knownOf, markForeign, PASSWORD, restorePeople, secretsOf } from './fill.js';
import type { Actor } from './fill.js';
import { faultsOf } from './judge-answer.js';
import type { Got } from './judge-answer.js';
import { makeCall, MANNERS } from './make-call.js';
import type { Call, Manner } from './make-call.js';
import { operationsOf, TO_THE_ROOT } from './operations.js';
import type { Description, Operation } from './operations.js';
import type { Known } from './values.js';

export interface Verdict {
  operations: number;
  calls: number;
  /** How often each status was answered. */
  statuses: Record<string, number>;
  /** Operations that were never done (2xx), and so were tried at their door only. */
  neverServed: string[];
  faults: string[];
}

interface Options {
  seed: number;
  /** How often every operation is asked in each manner by each person. */
  rounds: number;
  /** Ends early after so long, ms. */
  withinMs: number;
  tell?: (line: string) => void;
}

const WHO = ['nobody', ...Object.keys(ACTORS)] as ('nobody' | Actor)[];
const PLANNED_WITHIN_MS = 90_000;
const ANSWERS_WITHIN_MS = 20_000;
const VALID_TRIES = 6;
const FAULTS_SHOWN_EACH = 3;

/** Asks every described operation in every manner as everybody, on the demo lab, and judges each answer. */
export async function fuzzApi({ seed, rounds, withinMs, tell = () => {} }: Options): Promise<Verdict> {
  const lab = await startLab({ filled: 'demo', worker: false });
  try {
    await markForeign(lab.records);
    await planOnce(lab);
    return await new Fuzz(lab, seed, tell).run(rounds, Date.now() + withinMs);
  } finally {
    await lab.stop();
  }
}

/** Lets a worker do what the demo lab has announced, its plan above all; from then on nothing moves but what is asked. */
async function planOnce({ records, acting, databaseUrl }: Lab): Promise<void> {
  const settings = { databaseUrl, publicUrl: 'http://localhost', log: 'quiet', lockMs: 30_000 } as const;
  const worker = await startWorker(settings, acting);
  const planned = () => new PlanRepository(records.manager).getPublished().catch(() => null);
  await until(planned, PLANNED_WITHIN_MS).finally(() => worker.stop());
}

class Fuzz {
  private readonly clients = new Map<string, Client>();
  private readonly verdict: Verdict = { operations: 0, calls: 0, statuses: {}, neverServed: [], faults: [] };
  private readonly served = new Set<string>();
  private readonly told = new Map<string, number>();
  private readonly described = new DescribedAnswers();
  private passwordHash = '';

  constructor(
    private readonly lab: Lab,
    private readonly seed: number,
    private readonly tell: (line: string) => void,
  ) {}

  async run(rounds: number, end: number): Promise<Verdict> {
    const api = (await this.lab.visitor().get<Description>('/openapi.json')).body;
    const operations = operationsOf(api);
    this.passwordHash = await hashPassword(PASSWORD);
    this.verdict.operations = operations.length;
    for (let round = 1; round <= rounds && Date.now() < end; round++) {
      const known = {
        ...(await knownOf(this.lab.records)),
        ...(await examplesOf(this.lab.records)),
        ...(await placesOf(this.lab.records)),
      };
      const secrets = await secretsOf(this.lab.records);
      for (const who of WHO) {
        for (const operation of operations) {
          for (const manner of MANNERS) {
            if (Date.now() >= end) break;
            await this.ask({ who, operation, manner, known, api, round, secrets: secretsFor(who, secrets) });
          }
        }
      }
      this.tell(`round ${round}: ${this.verdict.calls} calls, ${this.verdict.faults.length} faults`);
    }
    const neverServed = operations.map(({ id }) => id).filter((id) => !this.served.has(id));
    return { ...this.verdict, neverServed };
  }

  /** What is meant to be taken is tried a few times with other words: much depends on how things stand. */
  private async ask(asking: Asking): Promise<void> {
    const tries = asking.manner === 'valid' ? VALID_TRIES : 1;
    for (let nr = 1; nr <= tries; nr++) {
      const status = await this.askOnce(asking, nr);
      if (status < 300 || status === 401 || status === 403) return;
    }
  }

  private async askOnce(asking: Asking, nr: number): Promise<number> {
    const { who, operation, manner, known, api, round, secrets } = asking;
    const name = `${round} ${who} ${operation.id} ${manner} ${nr}`;
    const call = makeCall(this.seed, name, { operation, manner, known, api });
    const client = await this.clientOf(who);
    const got = await send(client, call);
    this.verdict.calls++;
    this.verdict.statuses[got.status] = (this.verdict.statuses[got.status] ?? 0) + 1;
    if (got.status < 300) this.served.add(operation.id);
    if (got.status === 401 || operation.path.startsWith('/session')) this.clients.delete(who);
    const label = `${who} ${call.method} ${operation.path} (${manner}, round ${round})`;
    const sent = `${call.path} ${decodeSafely(call.path)} ${JSON.stringify(call.headers)} ${call.body ?? ''}`;
    const open = isOpen(this.lab.endpoints, operation);
    const flaws = this.described.flawsIn(call.method, call.path, got.status, jsonIn(got));
    const asked = { label, sent, open, signedIn: who !== 'nobody', secrets };
    for (const fault of [...faultsOf(asked, got), ...flaws.map((flaw) => `${label} ${flaw}`)])
      this.blame(fault, call, got.text);
    return got.status;
  }

  /** The same fault of the same operation is told a few times, not hundreds. */
  private blame(fault: string, call: Call, answer: string): void {
    const kind = fault.replace(/^\w+ /, '').replace(/\(.*?\)/, '');
    const times = (this.told.get(kind) ?? 0) + 1;
    this.told.set(kind, times);
    if (times > FAULTS_SHOWN_EACH) return;
    const sent = `${call.path.slice(0, 200)} ${(call.body ?? '').slice(0, 300)}`;
    this.verdict.faults.push(`${fault}\n    sent ${sent}\n    got ${answer.slice(0, 300)}`);
  }

  /** Signed in, however the last calls have left this person. */
  private async clientOf(who: 'nobody' | Actor): Promise<Client> {
    const there = this.clients.get(who);
    if (there) return there;
    const client = new Client(this.lab.baseUrl);
    if (who !== 'nobody') {
      await restorePeople(this.lab.records, this.passwordHash);
      await client.signIn(emailOf(who), PASSWORD);
    }
    this.clients.set(who, client);
    return client;
  }
}

interface Asking {
  who: 'nobody' | Actor;
  operation: Operation;
  manner: Manner;
  known: Known;
  api: Description;
  round: number;
  secrets: readonly string[];
}

/** People of the lab see every team's work. */
function secretsFor(who: string, secrets: readonly string[]): readonly string[] {
  return who === 'requester' || who === 'nobody' ? secrets : [];
}

async function send(client: Client, { method, path, headers, body }: Call) {
  const abort = new AbortController();
  const late = setTimeout(() => abort.abort(), ANSWERS_WITHIN_MS);
  try {
    const response = await client.fetch(path, { method, headers, body, redirect: 'manual', signal: abort.signal });
    const type = response.headers.get('content-type') ?? '';
    // A stream of events never ends: that it began is enough.
    const text = type.startsWith('text/event-stream') ? '' : await response.text();
    return { status: response.status, type, text };
  } catch (error) {
    return { status: 599, type: '', text: String(error) };
  } finally {
    clearTimeout(late);
    abort.abort();
  }
}

/** Undefined where the answer is empty or no JSON. */
function jsonIn({ type, text }: Got): unknown {
  return JSON_TYPES.test(type) && text !== '' ? JSON.parse(text) : undefined;
}

function isOpen(endpoints: readonly Endpoint[], { method, path }: Operation): boolean {
  const inCode = path.replace(TO_THE_ROOT, '').replace(/\{(\w+)\}/g, ':$1');
  return endpoints.some((one) => one.method === method && one.path === inCode && one.access === 'everybody');
}

function decodeSafely(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
