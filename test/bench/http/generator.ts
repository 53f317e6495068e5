import { Agent, request } from 'node:http';
import { text } from 'node:stream/consumers';
import { setTimeout as pause } from 'node:timers/promises';
import type { Call, Figures, Order } from './orders.js';

/**
 * Sends requests from a process of its own. With a rate it keeps to it whatever the answers take, and each time counts from the
 * moment when the request was due, so that a server that stalls is not spared those that it kept from being sent. Without a
 * rate a number of connections ask as fast as they are answered.
 */
const order = JSON.parse(await text(process.stdin)) as Order;
const agent = new Agent({ keepAlive: true, maxSockets: order.connections });
const times: { kind: string; ms: number; ok: boolean }[] = [];
let turn = 0;

const end = Date.now() + order.seconds * 1_000;
await (order.perSecond === null
  ? Promise.all(Array.from({ length: order.connections }, closedLoop))
  : openLoop(order.perSecond));
process.stdout.write(JSON.stringify(figuresOf()));
process.exit();

async function closedLoop(): Promise<void> {
  while (Date.now() < end) await ask(nextCall(), performance.now());
}

async function openLoop(perSecond: number): Promise<void> {
  const began = performance.now();
  const asked: Promise<void>[] = [];
  for (let nr = 0; nr < perSecond * order.seconds; nr++) {
    const due = began + (nr * 1_000) / perSecond;
    const early = due - performance.now();
    if (early > 1) await pause(early);
    asked.push(ask(nextCall(), due));
  }
  await Promise.all(asked);
}

function nextCall(): Call {
  return order.calls[turn++ % order.calls.length]!;
}

function ask({ kind, method, path, body, cookie }: Call, due: number): Promise<void> {
  const base = order.baseUrls[turn % order.baseUrls.length]!;
  const content = body === undefined ? null : JSON.stringify(body);
  const type =
    content === null ? {} : { 'content-type': 'application/json', 'content-length': Buffer.byteLength(content) };
  return new Promise((resolve) => {
    const answered = (ok: boolean) => {
      times.push({ kind, ms: performance.now() - due, ok });
      resolve();
    };
    const sent = request(
      `${base}${path}`,
      { method, agent, headers: { cookie, 'x-lab-page': '1', ...type } },
      (response) => {
        response.resume();
        response.once('end', () => answered(response.statusCode! < 400));
      },
    );
    sent.once('error', () => answered(false));
    sent.end(content ?? undefined);
  });
}

function figuresOf(): Figures {
  const kinds = [...new Set(times.map(({ kind }) => kind))].sort();
  const of = (some: typeof times) => {
    const sorted = some.map(({ ms }) => ms).sort((a, b) => a - b);
    const at = (share: number) =>
      Math.round(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]! * 10) / 10;
    return {
      count: some.length,
      errors: some.filter(({ ok }) => !ok).length,
      p50: at(0.5),
      p95: at(0.95),
      p99: at(0.99),
    };
  };
  const byKind = Object.fromEntries(kinds.map((kind) => [kind, of(times.filter((one) => one.kind === kind))]));
  return { ...of(times), perSecond: Math.round(times.length / order.seconds), byKind };
}
