import { setTimeout as pause } from 'node:timers/promises';

const SHORTEST_PAUSE_MS = 100;
const LONGEST_PAUSE_MS = 2_000;
/** Not there yet, starting up, shutting down, no connection left: all of that passes. A wrong password does not. */
const PASSES = /^(ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|57P0[1-3]|53300|08\w{3})$/;

/**
 * Does what needs the database, again and again until the database is there: it may be starting up, or go away in between.
 *
 * @param withinMs how long to try; then the last error is thrown
 */
export async function whenThere<Done>(act: () => Promise<Done>, withinMs = 60_000): Promise<Done> {
  const end = performance.now() + withinMs;
  for (let pauseMs = SHORTEST_PAUSE_MS; ; pauseMs = Math.min(pauseMs * 2, LONGEST_PAUSE_MS)) {
    try {
      return await act();
    } catch (error) {
      if (performance.now() > end || !passes(error)) throw error;
    }
    await pause(pauseMs);
  }
}

function passes(error: unknown): boolean {
  const { code, message, driverError } = error as { code?: string; message?: string; driverError?: { code?: string } };
  return PASSES.test(driverError?.code ?? code ?? '') || /connection (terminated|timeout|ended)/i.test(message ?? '');
}
