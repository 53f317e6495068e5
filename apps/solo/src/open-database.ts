import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { LabError } from '#libs/errors/src/index.js';
import { withDatabase } from './database-url.js';
import { startEmbeddedPostgres } from './embedded-postgres.js';
import type { EmbeddedPostgres } from './embedded-postgres.js';
import { claimUse } from './postgres/claim-use.js';
import type { Claim } from './postgres/claim-use.js';
import { keepRunning } from './postgres/keep-running.js';
import { projectRoot } from './project-root.js';

export interface OpenDatabase {
  url: string;
  /** Gives it back, and stops the embedded server when nobody else works on it. */
  stop(): Promise<void>;
}

interface Place {
  databaseUrl?: string | undefined;
  dataFolder?: string | undefined;
}

interface Lab {
  /** Says to whoever looks at the terminal that the database went down, and came back. */
  tell(sentence: string): void;
  onTakenOver(): void;
}

const NAME = 'loadtrain';
const OPEN_TRIES = 40;
const TRY_EVERY_MS = 250;

/** The lab's database for a command, which works beside a lab and other commands: the one of DATABASE_URL, else the embedded one. */
export async function openForCommand(place: Place): Promise<OpenDatabase> {
  if (place.databaseUrl) return elsewhere(place.databaseUrl);
  const { url, postgres, claim } = await embedded(place, { alone: false });
  return { url, stop: () => claim.end(() => postgres.stop()) };
}

/**
 * The same for a lab, which keeps the embedded one running for as long as it is open.
 *
 * @throws {LabError} `lab/runs-already` when another process runs the lab on the same data folder
 */
export async function openForLab(place: Place, { tell, onTakenOver }: Lab): Promise<OpenDatabase> {
  if (place.databaseUrl) return elsewhere(place.databaseUrl);
  const { url, postgres, claim } = await embedded(place, { alone: true });
  return { url, stop: keepRunning(claim, { postgres, url, tell, onTakenOver }) };
}

interface Embedded {
  url: string;
  postgres: EmbeddedPostgres;
  claim: Claim;
}

/** Tries again when another process, the last to use the server until now, has stopped it in between. */
async function embedded({ dataFolder }: Place, use: { alone: boolean }): Promise<Embedded> {
  for (let tries = 1; ; tries++) {
    const postgres = await startEmbeddedPostgres({ folder: dataFolder ?? join(projectRoot(), '.data') });
    try {
      const url = await withDatabase(postgres.url, NAME);
      return { url, postgres, claim: await claimUse(url, use) };
    } catch (error) {
      if (error instanceof LabError || tries === OPEN_TRIES) throw error;
      await pause(TRY_EVERY_MS);
    }
  }
}

function elsewhere(url: string): OpenDatabase {
  return { url, stop: async () => {} };
}
