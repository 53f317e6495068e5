import { join } from 'node:path';
import { withDatabase } from './database-url.js';
import { startEmbeddedPostgres } from './embedded-postgres.js';
import { claimSoleUse } from './sole-use.js';
import { projectRoot } from './project-root.js';

export interface OpenDatabase {
  url: string;
  /** Stops what was started for it. */
  stop(): Promise<void>;
}

interface Place {
  databaseUrl?: string | undefined;
  dataFolder?: string | undefined;
}

const NAME = 'loadtrain';

/**
 * The lab's database: the one that DATABASE_URL names, or else the one that comes along, in `.data/` of the project.
 *
 * @param alone a lab claims its data folder; a command works beside it, and stops the database only if it was down before
 * @throws Error when it should be alone and another process runs the lab on the same data folder
 */
export async function openDatabase(
  { databaseUrl, dataFolder }: Place,
  { alone } = { alone: true },
): Promise<OpenDatabase> {
  if (databaseUrl) return { url: databaseUrl, stop: async () => {} };
  const postgres = await startEmbeddedPostgres({ folder: dataFolder ?? join(projectRoot(), '.data') });
  const url = await withDatabase(postgres.url, NAME);
  if (!alone) return { url, stop: async () => void (postgres.ranAlready || postgres.stop()) };
  const giveBack = await claimSoleUse(url);
  return {
    url,
    stop: async () => {
      await giveBack();
      postgres.stop();
    },
  };
}
