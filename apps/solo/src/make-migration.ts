import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SystemClock } from '#libs/calendar/src/index.js';
import { drift, migrate, openRecords } from '#libs/records/src/index.js';
import { startEmbeddedPostgres } from './embedded-postgres.js';

const FOLDER = join('libs', 'records', 'src');

/**
 * Writes the next migration: what separates the entities from all migrations so far, tried on an empty database.
 * `node apps/tooling/run-ts.mjs apps/solo/src/make-migration.ts add calibration due` → `…-add-calibration-due.ts`
 */
async function makeMigration(words: string[]): Promise<void> {
  if (words.length === 0) throw new Error('Say what it does, e.g.: make-migration.ts add calibration due');
  const { up, down } = await difference();
  if (up.length === 0) return console.log('Entities and migrations agree: there is nothing to write.');
  const stamp = new SystemClock().nowMs();
  const file = `${stamp}-${words.join('-').toLowerCase()}`;
  const name = `${words.map(capital).join('')}${stamp}`;
  await writeFile(join(FOLDER, 'migrations', `${file}.ts`), textOf(name, up, down));
  await list(name, file);
  console.log(`${file}.ts: ${up.length} statements. Read it, give it a sentence, and run prettier.`);
}

async function difference(): Promise<{ up: string[]; down: string[] }> {
  const folder = await mkdtemp(join(tmpdir(), 'loadtrain-migration-'));
  const postgres = await startEmbeddedPostgres({ folder, fast: true });
  try {
    const records = await openRecords(postgres.url);
    await migrate(records);
    return await drift(records).finally(() => records.destroy());
  } finally {
    postgres.stop();
    await rm(folder, { recursive: true });
  }
}

function textOf(name: string, up: string[], down: string[]): string {
  const run = (statements: string[]) => statements.map((sql) => `    await runner.query(${quoted(sql)});\n`).join('');
  return `import type { MigrationInterface, QueryRunner } from 'typeorm';

export class ${name} implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
${run(up)}  }

  async down(runner: QueryRunner): Promise<void> {
${run(down)}  }
}
`;
}

function quoted(sql: string): string {
  return `\`${sql.replaceAll('\\', '\\\\').replaceAll('`', '\\`').replaceAll('${', '\\${')}\``;
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1).toLowerCase();
}

async function list(name: string, file: string): Promise<void> {
  const path = join(FOLDER, 'migrations.ts');
  const text = await readFile(path, 'utf8');
  const imported = text.replace('\n\n/**', `\nimport { ${name} } from './migrations/${file}.js';\n\n/**`);
  await writeFile(path, imported.replace(/,?\s*\] as const/, `, ${name}] as const`));
}

await makeMigration(process.argv.slice(2));
