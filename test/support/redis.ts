import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';

export interface TestRedis {
  url: string;
  stop(): Promise<void>;
  /** Ends it as a power cut would, and starts it anew with nothing in it. */
  loseEverything(): Promise<void>;
}

/** Why there is no Redis to test with; null when there is one. */
export function withoutRedis(): string | null {
  const found = spawnSync('redis-server', ['--version']).status === 0;
  return found ? null : 'there is no redis-server on the PATH; on Debian: apt-get install redis-server';
}

/** A Redis of its own for one spec, on a free port of 127.0.0.1. */
export async function startRedis(): Promise<TestRedis> {
  const port = await freePort();
  let server = await run(port);
  const end = async (signal: NodeJS.Signals) => {
    const gone = once(server, 'exit');
    server.kill(signal);
    await gone;
  };
  return {
    url: `redis://127.0.0.1:${port}`,
    stop: () => end('SIGTERM'),
    loseEverything: async () => {
      await end('SIGKILL');
      server = await run(port);
    },
  };
}

async function run(port: number) {
  const options = [
    '--port',
    String(port),
    '--bind',
    '127.0.0.1',
    '--save',
    '',
    '--appendonly',
    'no',
    '--dir',
    tmpdir(),
  ];
  const server = spawn('redis-server', options, { stdio: ['ignore', 'pipe', 'ignore'] });
  for await (const piece of server.stdout) if (String(piece).includes('Ready to accept')) break;
  server.stdout.resume();
  return server;
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  probe.close();
  await once(probe, 'close');
  return port;
}
