import pg from 'pg';
import { setTimeout as pause } from 'node:timers/promises';

const LONGEST_PAUSE_MS = 2_000;
/** Not there yet, starting up, shutting down, no connection left: all of that passes. A wrong password does not. */
const PASSES = /^(ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|57P0[123]|53300)$/;

/**
 * Waits until the database takes connections, as after a restart of everything at once.
 *
 * @param withinMs how long at most; then the last error is thrown
 */
export async function waitForDatabase(url: string, withinMs = 60_000): Promise<void> {
  const end = Date.now() + withinMs;
  for (let pauseMs = 100; ; pauseMs = Math.min(pauseMs * 2, LONGEST_PAUSE_MS)) {
    const trouble = await tryOnce(url);
    if (trouble === null) return;
    if (Date.now() > end || !PASSES.test(trouble.code ?? '')) throw trouble;
    await pause(pauseMs);
  }
}

async function tryOnce(url: string): Promise<(Error & { code?: string }) | null> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 5_000 });
  client.on('error', () => {}); // the same error is thrown to whoever waits for the connection
  try {
    await client.connect();
    return null;
  } catch (error) {
    return error as Error & { code?: string };
  } finally {
    await client.end().catch(() => {});
  }
}
