import { setTimeout as pause } from 'node:timers/promises';
import { LabError } from '#libs/errors/src/index.js';
import type { EmbeddedPostgres } from '../embedded-postgres.js';
import { claimUse } from './claim-use.js';
import type { Claim } from './claim-use.js';

const TRY_EVERY_MS = 500;

interface Watch {
  postgres: Pick<EmbeddedPostgres, 'bringBack' | 'stop'>;
  /** Of the lab's database on it. */
  url: string;
  /** Says to whoever looks at the terminal what happened. */
  tell(sentence: string): void;
  /** Another lab has taken the data folder meanwhile: this one must end. */
  onTakenOver(): void;
}

/**
 * Keeps a lab's embedded database running: when it goes down, it is started again on the same port, and claimed again. What was
 * acknowledged is in its log on disk and comes back with it.
 *
 * @returns what ends that, and stops the server unless a command still works on it
 */
export function keepRunning(claim: Claim, { postgres, url, tell, onTakenOver }: Watch): () => Promise<void> {
  let [current, ended] = [claim, false];

  const comeBack = async () => {
    const wentMs = performance.now();
    tell('The database went down. It is being started again.');
    while (!ended) {
      try {
        await postgres.bringBack();
        current = await claimUse(url, { alone: true });
        current.onLost(() => void comeBack());
        tell(
          `The database is back after ${Math.ceil((performance.now() - wentMs) / 1000)} s. Nothing that was kept is lost.`,
        );
        return;
      } catch (error) {
        if (error instanceof LabError) return onTakenOver();
        await pause(TRY_EVERY_MS);
      }
    }
  };

  current.onLost(() => void comeBack());
  return async () => {
    ended = true;
    await current.end(() => postgres.stop());
  };
}
