import pg from 'pg';

/** Makes a database of this name on a server unless it is there. @returns its address */
export async function withDatabase(serverUrl: string, name: string): Promise<string> {
  const client = new pg.Client({ connectionString: serverUrl });
  client.on('error', () => {}); // what is asked then is refused, and with the reason
  await client.connect();
  try {
    const { rowCount } = await client.query('select 1 from pg_database where datname = $1', [name]);
    if (!rowCount) await client.query(`create database ${pg.escapeIdentifier(name)}`);
  } finally {
    await client.end();
  }
  return Object.assign(new URL(serverUrl), { pathname: `/${name}` }).href;
}
