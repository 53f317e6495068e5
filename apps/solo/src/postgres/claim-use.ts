import pg from 'pg';
import { LabError } from '#libs/errors/src/index.js';

// Any numbers that nothing else in this database locks.
const SOLE_LAB_LOCK = 918_273;
const USE_LOCK = 918_274;

/** That a process works on the embedded database. A process that is killed gives it back by dying. */
export interface Claim {
  /** Called once when the connection that holds the claim is lost. */
  onLost(hear: () => void): void;
  /** Gives it back, and calls `last` first when nobody else has one and nobody can get one meanwhile. */
  end(last: () => void): Promise<void>;
}

/**
 * Claims the use of the embedded database: whoever gives back the last claim may stop the server, and nobody else.
 *
 * @param alone for a lab, of which there is one on a data folder; a command works beside it and beside other commands
 * @throws {LabError} `lab/runs-already` when it should be alone and another lab is there
 */
export async function claimUse(url: string, { alone }: { alone: boolean }): Promise<Claim> {
  const client = new pg.Client({ connectionString: url, keepAlive: true });
  let lost: (() => void) | null = null;
  client.on('error', () => {}); // `end` follows
  await client.connect();
  await client.query('select pg_advisory_lock_shared($1)', [USE_LOCK]);
  if (alone && !(await tryLock(client, SOLE_LAB_LOCK))) {
    await client.end();
    throw new LabError(
      'lab/runs-already',
      'The lab runs already on this data folder. Stop it first, or choose another folder with LOADTRAIN_DATA.',
    );
  }
  client.once('end', () => lost?.());
  return {
    onLost: (hear) => void (lost = hear),
    end: async (last) => {
      lost = null;
      if (await isLast(client).catch(() => false)) last();
      await client.end().catch(() => {});
    },
  };
}

async function isLast(client: pg.Client): Promise<boolean> {
  await client.query('select pg_advisory_unlock_shared($1)', [USE_LOCK]);
  return tryLock(client, USE_LOCK);
}

async function tryLock(client: pg.Client, lock: number): Promise<boolean> {
  const { rows } = await client.query<{ mine: boolean }>('select pg_try_advisory_lock($1) as mine', [lock]);
  return rows[0]!.mine;
}
