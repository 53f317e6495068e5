import { setTimeout as pause } from 'node:timers/promises';

/** Looks again and again until there is something. @throws Error after a minute, unless told otherwise: machines that test may be slow */
export async function until<Value>(
  look: () => Promise<Value | null | undefined | false>,
  withinMs = 60_000,
): Promise<Value> {
  const end = Date.now() + withinMs;
  for (;;) {
    const found = await look();
    if (found) return found;
    if (Date.now() > end) throw new Error(`It did not happen within ${withinMs} ms.`);
    await pause(25);
  }
}
