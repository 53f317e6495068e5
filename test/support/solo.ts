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
  /** Where its data lies. */
  folder: string;
  records: DataSource;
  /** Ends the process as a crash would; with `power`, the database too. */
  kill(also?: { power: boolean }): Promise<void>;
  /** Ends the database alone, as a crash would. */
  killDatabase(): void;
  /** Asks it to end. @returns how it did */
  end(): Promise<{ code: number | null }>;
  /** What it has said on its terminal's error side since it was started last. */
  said(): string;
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
  let child = runSolo(folder, port);
  let said = heard(child);
  const end = async (signal: NodeJS.Signals) => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const gone = once(child, 'exit');
    child.kill(signal);
    await gone;
  };
  const ready = () => until(() => isReady(baseUrl), READY_WITHIN_MS);
  await ready();
  return {
    ...{ baseUrl, records, folder },
    kill: async ({ power } = { power: false }) => {
      await end('SIGKILL');
      if (power) process.kill(postmaster(folder), 'SIGKILL');
    },
    killDatabase: () => void process.kill(postmaster(folder), 'SIGKILL'),
    end: async () => {
      await end('SIGTERM');
      return { code: child.exitCode };
    },
    said: () => said(),
    start: async () => {
      child = runSolo(folder, port);
      said = heard(child);
      await ready();
    },
    stop: async () => {
      if (records.isInitialized) await records.destroy();
      await end('SIGTERM');
      (await startEmbeddedPostgres({ folder })).stop();
      await rm(folder, { recursive: true });
    },
  };
}

/** @param settings more of its environment variables */
export function runSolo(
  folder: string,
  port: number,
  asked: string[] = [],
  settings: Record<string, string> = {},
): ChildProcess {
  const env = {
    PATH: process.env['PATH'] ?? '',
    HOST: '127.0.0.1',
    PORT: String(port),
    LOADTRAIN_DATA: folder,
    LOG: 'quiet',
    ...settings,
  };
  const main = join('dist', 'apps', 'solo', 'src', 'main.js');
  return spawn(process.execPath, ['--enable-source-maps', main, ...asked], {
    cwd: projectRoot(),
    env,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
}

/** Collects what a process says on its error side, and shows it too. @returns what gives all of it so far */
export function heard(child: ChildProcess): () => string {
  let text = '';
  child.stderr?.setEncoding('utf8').on('data', (part: string) => {
    text += part;
    process.stderr.write(part);
  });
  return () => text;
}

function postmaster(folder: string): number {
  return Number(readFileSync(join(folder, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0]);
}

export async function isReady(url: string): Promise<boolean> {
  const answer = await fetch(`${url}/health/ready`, { signal: AbortSignal.timeout(2_000) }).catch(() => null);
  return answer?.status === 200;
}

export async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  probe.close();
  await once(probe, 'close');
  return port;
}
