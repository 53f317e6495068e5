import pg from 'pg';

const SOLE_USE_LOCK = 918_273; // any number that nothing else in this database locks

/**
 * Claims the embedded database for this process: the first to stop would take it away from a second.
 *
 * @returns what gives the claim back; a process that is killed gives it back by dying
 * @throws when another process has it, saying how to go on
 */
export async function claimSoleUse(url: string): Promise<() => Promise<void>> {
  const client = new pg.Client({ connectionString: url, keepAlive: true });
  client.on('error', () => {}); // the database went down: everything else hears of that too
  await client.connect();
  const { rows } = await client.query<{ mine: boolean }>('select pg_try_advisory_lock($1) as mine', [SOLE_USE_LOCK]);
  if (!rows[0]!.mine) {
    await client.end();
    throw new Error(
      'The lab runs already on this data folder. Stop it first, or choose another folder with LOADTRAIN_DATA.',
    );
  }
  return () => client.end().catch(() => {});
}
