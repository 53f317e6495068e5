// node apps/tooling/run-ts.mjs FILE.ts [args]: builds the whole tree (tests included) into dist/, then runs that file from there.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { buildSources } from './build-sources.mjs';
import { describeApi } from './describe-api.mjs';

const [file, ...args] = process.argv.slice(2);
if (!file) {
  console.error('usage: node apps/tooling/run-ts.mjs FILE.ts [arguments]');
  process.exit(2);
}
await buildSources(['apps', 'libs', 'seed', 'test']);
await describeApi();
const run = spawnSync(
  process.execPath,
  ['--enable-source-maps', '--expose-gc', join('dist', file.replace(/\.tsx?$/, '.js')), ...args],
  { stdio: 'inherit' },
);
process.exit(run.status ?? 1);
