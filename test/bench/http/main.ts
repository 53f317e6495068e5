import 'reflect-metadata';
import { spawn } from 'node:child_process';
import { loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { createApi } from '#apps/api/src/platform/create-api.js';
import { SystemClock } from '#libs/calendar/src/index.js';
import { LabRecords, openRecords } from '#libs/records/src/index.js';
import { withoutRedis } from '../../support/redis.js';
import { startTopology } from '../../support/topology.js';
import type { Topology } from '../../support/topology.js';
import type { BareOrder } from './bare-route.js';
import { captureSql } from './capture-sql.js';
import { cpuShare } from './cpu-share.js';
import { costOf } from './explain.js';
import type { Cost } from './explain.js';
import { grow } from './grow.js';
import { cookiesAt, mixedUse } from './mixed-use.js';
import type { Who } from './mixed-use.js';
import { generate } from './orders.js';
import type { Call } from './orders.js';

/** `npm run bench:http -- [--seconds 10] [--requests 100000] [--rates 25,100,400] [--rounds 3]` */
const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '10' },
    requests: { type: 'string', default: '100000' },
    rates: { type: 'string', default: '25,100,400' },
    rounds: { type: 'string', default: '3' },
  },
});
const [seconds, rounds] = [Number(values.seconds), Number(values.rounds)];
const CONNECTIONS = 64;
const BUSY_CONNECTIONS = 16;
/** Requests a second while both processes get going. */
const WARMING_RATE = 50;

/** Looked at by EXPLAIN before and after the database has grown. */
const HOT: [name: string, who: Who, path: string][] = [
  ['requests, all', 'manager', '/requests'],
  ['requests, own team', 'requester', '/requests'],
  ['requests, one state', 'manager', '/requests?state=accepted'],
  ['requests, by a common word', 'manager', '/requests?q=bracket'],
  ['requests, by a rare word', 'manager', '/requests?q=R-2021'],
  ['bench, next job', 'technician', '/bench'],
  ['plan', 'manager', '/plan'],
  ['reports', 'manager', '/reports'],
];

const redis = withoutRedis() === null;
const lab = await startTopology({ apis: 2, workers: 1, redis });
const records = await openRecords(lab.databaseUrl, { poolSize: 4 });
try {
  const cookies = await cookiesAt(lab.baseUrls[0]!);
  const small = await mixedUse(records, cookies);
  const history = small.find(({ kind }) => kind === 'history')!.path.replace('/api/v1', '');
  const hot = [...HOT, ['history', 'manager', history] as [string, Who, string]];
  console.log(
    `queues on ${redis ? 'Redis' : 'PostgreSQL'}; load of this machine before: ${loadavg()
      .map((one) => one.toFixed(1))
      .join(' ')}`,
  );
  const before = await costs(hot, cookies);
  const began = Date.now();
  await grow(records, Number(values.requests));
  console.log(`grown by ${values.requests} requests in ${Math.round((Date.now() - began) / 1000)} s`);
  tellGrowth(hot, before, await costs(hot, cookies));
  const calls = await mixedUse(records, cookies); // of the lab as it has grown
  console.log('\nfirst, code that nobody has run yet and nothing kept; people who come later do not meet that:');
  await atRate(lab, calls, 2, WARMING_RATE);
  console.log('\nafter that:');
  for (const apis of [1, 2])
    for (const rate of values.rates.split(',').map(Number)) await atRate(lab, calls, apis, rate);
  await besideBareRoute(lab, cookies.manager);
} finally {
  await records.destroy();
  await lab.stop();
}
process.exit();

/** What one request of each hot path costs the database, by the very statements that the API sends for it. */
async function costs(hot: typeof HOT, cookies: Record<Who, string>): Promise<Cost[]> {
  const found: Cost[] = [];
  for (const [, who, path] of hot) {
    const { statements } = await asServed(path, cookies[who]);
    found.push(await costOf(records, statements));
  }
  return found;
}

/** One request to an API in this process, with the statements that it sent. */
async function asServed(path: string, cookie: string) {
  const config = {
    databaseUrl: lab.databaseUrl,
    host: '127.0.0.1',
    port: 0,
    proxies: 0,
    log: 'quiet',
    sessionIdleMin: 60,
    sessionHours: 8,
  } as const;
  const api = await createApi(config, new LabRecords(records, new SystemClock()));
  await api.listen(0, '127.0.0.1');
  const ask = async () => (await fetch(`${await api.getUrl()}/api/v1${path}`, { headers: { cookie } })).json();
  await ask(); // what is read once and kept is not part of it
  const { statements, done } = await captureSql(ask);
  api.getHttpServer().close();
  return { statements, body: done as unknown };
}

function tellGrowth(hot: typeof HOT, before: readonly Cost[], after: readonly Cost[]): void {
  console.log('\nhot path                    queries  server ms, demo lab  server ms, grown  tables read whole');
  hot.forEach(([name], at) => {
    const [small, large] = [before[at]!, after[at]!];
    const row = [
      name.padEnd(28),
      String(large.queries).padStart(6),
      small.serverMs.toFixed(2).padStart(20),
      large.serverMs.toFixed(2).padStart(17),
    ];
    console.log(`${row.join('')}  ${large.wholeTables.join(', ') || 'none'}`);
  });
}

async function atRate({ baseUrls, parts }: Topology, calls: Call[], apis: number, perSecond: number): Promise<void> {
  const pids = parts
    .filter(({ name }) => name.startsWith('api'))
    .slice(0, apis)
    .map((part) => part.pid()!);
  const cpu = cpuShare(pids);
  const found = await generate({
    baseUrls: baseUrls.slice(0, apis),
    calls,
    seconds,
    perSecond,
    connections: CONNECTIONS,
  });
  const { count, errors, p50, p95, p99, byKind } = found;
  console.log(
    `\n${apis} api, ${perSecond}/s for ${seconds} s: ${count} answered, ${errors} errors, p50 ${p50} p95 ${p95} p99 ${p99} ms; api CPU ${cpu.pct()} % of a core, ${cpu.msEach(count)} ms a request; load ${loadavg()[0]!.toFixed(1)}`,
  );
  const slowest = Object.entries(byKind)
    .sort(([, a], [, b]) => b.p95 - a.p95)
    .slice(0, 5);
  console.log(`  slowest: ${slowest.map(([kind, times]) => `${kind} p95 ${times.p95}`).join(', ')}`);
}

/** The list of requests as fast as it is answered, ours and the bare route in turn; the middle of the rounds counts. */
async function besideBareRoute({ baseUrls, databaseUrl, parts }: Topology, cookie: string): Promise<void> {
  const { statements, body } = await asServed('/requests', cookie);
  const bare = await startBare({ databaseUrl, poolSize: 20, statements, body });
  const order = { seconds, perSecond: null, connections: BUSY_CONNECTIONS };
  const ours = {
    ...order,
    baseUrls: [baseUrls[0]!],
    calls: [{ kind: 'ours', method: 'GET', path: '/api/v1/requests', cookie }],
  };
  const peer = { ...order, baseUrls: [bare.url], calls: [{ kind: 'bare', method: 'GET', path: '/bare', cookie }] };
  const ratios: number[] = [];
  for (let round = 1; round <= rounds; round++) {
    const [myCpu, mine] = [cpuShare([parts[0]!.pid()!]), await generate(ours)];
    const myMs = myCpu.msEach(mine.count);
    const [peerCpu, theirs] = [cpuShare([bare.pid]), await generate(peer)];
    const peerMs = peerCpu.msEach(theirs.count);
    ratios.push(mine.perSecond / theirs.perSecond);
    console.log(
      `round ${round}: requests list ${mine.perSecond}/s (p95 ${mine.p95} ms, CPU ${myMs} ms each), bare route with the same ${statements.length} statements ${theirs.perSecond}/s (p95 ${theirs.p95} ms, CPU ${peerMs} ms each)`,
    );
  }
  const middle = ratios.sort((a, b) => a - b)[Math.floor(ratios.length / 2)]!;
  console.log(`throughput beside the bare route: ${(100 * middle).toFixed(0)} % (asked: 67 %)`);
  bare.stop();
}

async function startBare(order: BareOrder): Promise<{ url: string; pid: number; stop(): void }> {
  const child = spawn(process.execPath, [new URL('bare-route.js', import.meta.url).pathname], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  child.stdin.end(JSON.stringify(order));
  const url = await new Promise<string>((resolve) =>
    child.stdout.once('data', (line: Buffer) => resolve(String(line).trim())),
  );
  return { url, pid: child.pid!, stop: () => child.kill() };
}
