// Builds, runs every spec (arguments are passed on to Jest), and says at the very end how many passed, failed and were skipped.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));
const node = (args, env = {}) =>
  spawnSync(process.execPath, args, { stdio: 'inherit', env: { ...process.env, ...env } }).status ?? 1;

if (node([join('.config', 'build.mjs')]) !== 0) process.exit(1);

const folder = mkdtempSync(join(tmpdir(), 'loadtrain-results-'));
const file = join(folder, 'results.json');
const jest = join('node_modules', 'jest', 'bin', 'jest.js');
const options = [
  '-c',
  join('.config', 'jest.config.mjs'),
  '--maxWorkers=2',
  '--testTimeout=60000',
  '--json',
  `--outputFile=${file}`,
];
const status = node([
  '--experimental-vm-modules',
  '--disable-warning=ExperimentalWarning',
  jest,
  ...options,
  ...process.argv.slice(2),
]);

let failed = status === 0 ? 0 : 1;
let line = '0 passed, 1 failed, 0 skipped';
try {
  const results = JSON.parse(readFileSync(file, 'utf8'));
  // A file that could not be run at all has no test of its own to count.
  failed = Math.max(failed, results.numFailedTests + results.numRuntimeErrorTestSuites);
  line = `${results.numPassedTests} passed, ${failed} failed, ${results.numPendingTests + results.numTodoTests} skipped`;
} finally {
  rmSync(folder, { recursive: true });
  console.log(line);
  process.exitCode = failed === 0 ? 0 : 1;
}
