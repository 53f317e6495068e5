import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DataSource } from 'typeorm';
import { withDatabase } from '#apps/solo/src/database-url.js';
import { startEmbeddedPostgres } from '#apps/solo/src/embedded-postgres.js';
import { migrate, openRecords } from '#libs/records/src/index.js';
import { projectRoot } from './maybe.js';
import { until } from './until.js';

const READY_WITHIN_MS = 60_000;

/** The lab as `npm start` runs it, on a data folder of its own; it can be killed at any moment and started anew. */
export interface Solo {
  baseUrl: string;
  records: DataSource;
  /** Ends the process as a crash would; with `power`, the database too. */
  kill(also?: { power: boolean }): Promise<void>;
  /** Starts it on the same folder, until it can serve people. */
  start(): Promise<void>;
  stop(): Promise<void>;
}

/** @param fill puts something into the new database before the first start */
export async function startSolo(fill: (records: DataSource) => Promise<void>): Promise<Solo> {
  const folder = await mkdtemp(join(tmpdir(), 'loadtrain-solo-'));
  const postgres = await startEmbeddedPostgres({ folder });
  const records = await openRecords(await withDatabase(postgres.url, 'loadtrain'), { poolSize: 3 });
  await migrate(records);
  await fill(records);
  const port = await freePort();
  const baseUrl = `http://127.0.0.1:${port}`;
  let child = run(folder, port);
  const end = async (signal: NodeJS.Signals) => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const gone = once(child, 'exit');
    child.kill(signal);
    await gone;
  };
  const ready = () => until(() => isReady(baseUrl), READY_WITHIN_MS);
  await ready();
  return {
    ...{ baseUrl, records },
    kill: async ({ power } = { power: false }) => {
      await end('SIGKILL');
      if (power) process.kill(postmaster(folder), 'SIGKILL');
    },
    start: async () => {
      child = run(folder, port);
      await ready();
    },
    stop: async () => {
      await records.destroy();
      await end('SIGTERM');
      (await startEmbeddedPostgres({ folder })).stop();
      await rm(folder, { recursive: true });
    },
  };
}

function run(folder: string, port: number): ChildProcess {
  const env = {
    PATH: process.env['PATH'] ?? '',
    HOST: '127.0.0.1',
    PORT: String(port),
    LOADTRAIN_DATA: folder,
    LOG: 'quiet',
  };
  const main = join('dist', 'apps', 'solo', 'src', 'main.js');
  return spawn(process.execPath, ['--enable-source-maps', main], {
    cwd: projectRoot(),
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}

function postmaster(folder: string): number {
  return Number(readFileSync(join(folder, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0]);
}

async function isReady(url: string): Promise<boolean> {
  const answer = await fetch(`${url}/health/ready`, { signal: AbortSignal.timeout(2_000) }).catch(() => null);
  return answer?.status === 200;
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  probe.close();
  await once(probe, 'close');
  return port;
}
