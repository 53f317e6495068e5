// Before the specs that need a database: one PostgreSQL for the whole run, with one migrated database to clone from.
import { readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { buildSources } from '../../apps/tooling/build-sources.mjs';

const PREFIX = 'loadtrain-test-';

export default async function startDatabase() {
  await buildSources(['apps', 'libs', 'seed']);
  const { startEmbeddedPostgres } = await import('../../dist/apps/solo/src/embedded-postgres.js');
  await clearAway(startEmbeddedPostgres);
  const folder = join(tmpdir(), `${PREFIX}${process.pid}`);
  const postgres = await startEmbeddedPostgres({ folder, fast: true });
  globalThis.loadtrainDatabase = { postgres, folder };
  process.env.TEST_POSTGRES_URL = postgres.url;
  await makeTemplate(postgres.url);
}

async function makeTemplate(url) {
  const client = new pg.Client(url);
  await client.connect();
  await client.query('create database lab_template');
  await client.end();
  const { migrate, openRecords } = await import('../../dist/libs/records/src/index.js');
  const { prepareQueues } = await import('../../dist/libs/tasks/src/index.js');
  const template = url.replace(/\/[^/]*$/, '/lab_template');
  const records = await openRecords(template, { poolSize: 2 });
  await migrate(records);
  await records.destroy();
  await prepareQueues(template);
}

/** Runs that were killed leave their server behind. */
async function clearAway(startEmbeddedPostgres) {
  const left = (await readdir(tmpdir())).filter((name) => name.startsWith(PREFIX));
  for (const name of left.filter((name) => !alive(Number(name.slice(PREFIX.length))))) {
    const folder = join(tmpdir(), name);
    const orphan = await startEmbeddedPostgres({ folder, fast: true }).catch(() => null);
    orphan?.stop();
    await rm(folder, { recursive: true, force: true });
  }
}

function alive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}
