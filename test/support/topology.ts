import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { DataSource } from 'typeorm';
import { withDatabase } from '#apps/solo/src/database-url.js';
import { startEmbeddedPostgres } from '#apps/solo/src/embedded-postgres.js';
import { migrate, openRecords } from '#libs/records/src/index.js';
import { prepareQueues } from '#libs/tasks/src/index.js';
import { loadDemoLab } from '#seed/load-demo-lab.js';
import { projectRoot } from './maybe.js';
import { startRedis } from './redis.js';
import { until } from './until.js';
import { labClock } from './lab-clock.js';

const READY_WITHIN_MS = 60_000;

/** One part that can be killed at any moment and is started anew, as whatever watches over services would do. */
export interface Part {
  name: string;
  /** Of a process of ours; null for stores, and while it is not running. */
  pid(): number | null;
  kill(): Promise<void>;
}

/** The lab as services on one machine: PostgreSQL, Redis or not, API and worker processes of their own. */
export interface Topology {
  parts: Part[];
  baseUrls: string[];
  databaseUrl: string;
  /** Processes that ended although nobody had killed them. */
  endedByThemselves(): string[];
  /** Until every API process says that it can serve people. */
  ready(): Promise<void>;
  stop(): Promise<void>;
}

interface Options {
  apis: number;
  workers: number;
  redis: boolean;
  /** What is put into the new database; the demo lab unless told otherwise. */
  fill?: (records: DataSource) => Promise<void>;
}

/** Starts everything, on a database that keeps its promises about power cuts. */
export async function startTopology({
  apis,
  workers,
  redis: wanted,
  fill = (records) => loadDemoLab(records, labClock.nowMs()),
}: Options): Promise<Topology> {
  const folder = await mkdtemp(join(tmpdir(), 'loadtrain-topology-'));
  const postgres = await startEmbeddedPostgres({ folder });
  const databaseUrl = await withDatabase(postgres.url, 'loadtrain');
  await prepare(databaseUrl, fill);
  const redis = wanted ? await startRedis() : null;
  const shared = {
    DATABASE_URL: databaseUrl,
    REDIS_URL: redis?.url ?? '',
    LOG: 'quiet',
    TASK_LOCK_MS: '3000',
    HOST: '127.0.0.1',
  };
  const ports = await Promise.all(Array.from({ length: apis }, freePort));
  const services = [
    ...ports.map((port, nr) => new Service(`api ${nr + 1}`, 'apps/api/src/main.js', { ...shared, PORT: String(port) })),
    ...Array.from({ length: workers }, (_, nr) => new Service(`worker ${nr + 1}`, 'apps/worker/src/main.js', shared)),
  ];
  services.forEach((service) => service.start());
  const baseUrls = ports.map((port) => `http://127.0.0.1:${port}`);
  const ready = async () => void (await Promise.all(baseUrls.map((url) => until(() => isReady(url), READY_WITHIN_MS))));
  await ready();
  const stores: Part[] = [
    { name: 'PostgreSQL', pid: () => null, kill: () => killPostgres(folder) },
    ...(redis ? [{ name: 'Redis', pid: () => null, kill: () => redis.loseEverything() }] : []),
  ];
  return {
    parts: [...services, ...stores],
    baseUrls,
    databaseUrl,
    ready,
    endedByThemselves: () => services.flatMap(({ name, endedByItself }) => (endedByItself ? [name] : [])),
    stop: async () => {
      await Promise.all(services.map((service) => service.stop()));
      await redis?.stop();
      (await startEmbeddedPostgres({ folder })).stop();
      await rm(folder, { recursive: true });
    },
  };
}

async function prepare(url: string, fill: (records: DataSource) => Promise<void>): Promise<void> {
  const records = await openRecords(url, { poolSize: 3 });
  await migrate(records);
  await fill(records);
  await records.destroy();
  await prepareQueues(url);
}

/** A process of ours that is started again whenever it ends. */
class Service implements Part {
  private child: ChildProcess | null = null;
  private stopping = false;
  private killed = false;
  endedByItself = false;

  constructor(
    readonly name: string,
    private readonly file: string,
    private readonly environment: Record<string, string>,
  ) {}

  start(): void {
    const env = { PATH: process.env['PATH'] ?? '', ...this.environment };
    this.child = spawn(process.execPath, ['--enable-source-maps', join('dist', this.file)], {
      cwd: projectRoot(),
      env,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    this.child.once('exit', () => {
      if (!this.stopping && !this.killed) this.endedByItself = true;
      this.killed = false;
      if (!this.stopping) setTimeout(() => this.start(), 200);
    });
  }

  pid(): number | null {
    return this.child?.pid ?? null;
  }

  async kill(): Promise<void> {
    this.killed = this.child?.kill('SIGKILL') ?? false;
  }

  async stop(): Promise<void> {
    this.stopping = true;
    const { child } = this;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const gone = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGTERM');
    const late = setTimeout(() => child.kill('SIGKILL'), 10_000);
    await gone;
    clearTimeout(late);
  }
}

async function killPostgres(folder: string): Promise<void> {
  process.kill(Number(readFileSync(join(folder, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0]), 'SIGKILL');
  await pause(50);
  await startEmbeddedPostgres({ folder });
}

async function isReady(url: string): Promise<boolean> {
  const answer = await fetch(`${url}/health/ready`, { signal: AbortSignal.timeout(2_000) }).catch(() => null);
  return answer?.status === 200;
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
