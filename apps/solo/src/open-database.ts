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
 * @throws Error when another process runs the lab on the same data folder
 */
export async function openDatabase({ databaseUrl, dataFolder }: Place): Promise<OpenDatabase> {
  if (databaseUrl) return { url: databaseUrl, stop: async () => {} };
  const postgres = await startEmbeddedPostgres({ folder: dataFolder ?? join(projectRoot(), '.data') });
  const url = await withDatabase(postgres.url, NAME);
  const giveBack = await claimSoleUse(url);
  return {
    url,
    stop: async () => {
      await giveBack();
      postgres.stop();
    },
  };
}
