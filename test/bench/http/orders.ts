import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { text } from 'node:stream/consumers';

export interface Call {
  kind: string;
  method: string;
  path: string;
  body?: unknown;
  cookie: string;
}

/** What the generator is told to do. */
export interface Order {
  baseUrls: string[];
  calls: Call[];
  seconds: number;
  /** Requests a second; null for as many as are answered. */
  perSecond: number | null;
  connections: number;
}

export interface Times {
  count: number;
  errors: number;
  /** Times from when a request was due to the end of its answer, ms. */
  p50: number;
  p95: number;
  p99: number;
}

export interface Figures extends Times {
  perSecond: number;
  byKind: Record<string, Times>;
}

/** Has the generator do it in another process. */
export async function generate(order: Order): Promise<Figures> {
  const file = new URL('generator.js', import.meta.url);
  const child = spawn(process.execPath, [file.pathname], { stdio: ['pipe', 'pipe', 'inherit'] });
  child.stdin.end(JSON.stringify(order));
  const [out] = await Promise.all([text(child.stdout), once(child, 'exit')]);
  return JSON.parse(out) as Figures;
}
