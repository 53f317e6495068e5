import 'reflect-metadata';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { projectRoot } from '../support/maybe.js';
import { fuzzApi } from './fuzz-api.js';

const [seed = 1, rounds = 5] = process.argv.slice(2).map(Number);
const WITHIN_MS = 230_000;

/** `npm run test:fuzz [seed] [rounds]`: the same as the spec, for longer. Needs no server: it brings its own. */
const support = (name: string) =>
  import(pathToFileURL(join(projectRoot(), 'test', 'support', name)).href) as Promise<{ default(): Promise<void> }>;
await (await support('start-database.mjs')).default();
try {
  console.log(`seed ${seed}, at most ${rounds} rounds and ${WITHIN_MS / 1000} s`);
  const { operations, calls, statuses, neverServed, faults } = await fuzzApi({
    seed,
    rounds,
    withinMs: WITHIN_MS,
    tell: console.log,
  });
  faults.forEach((fault) => console.error(fault));
  console.log(`${operations} operations; answers: ${JSON.stringify(statuses)}`);
  console.log(`${neverServed.length} were never done, only refused: ${neverServed.join(', ')}`);
  console.log(`${calls} calls, ${calls - faults.length} passed, ${faults.length} failed`);
  process.exitCode = faults.length === 0 ? 0 : 1;
} finally {
  await (await support('stop-database.mjs')).default();
}
process.exit();
