// Runs specs by Jest and counts them.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const JEST = [
  ...['--experimental-vm-modules', '--disable-warning=ExperimentalWarning'],
  join('node_modules', 'jest', 'bin', 'jest.js'),
  ...['-c', join('.config', 'jest.config.mjs'), '--maxWorkers=2', '--testTimeout=60000'],
];

/**
 * @param {string[]} named parts of paths and options for Jest; none for every spec
 * @returns how many passed, failed and were skipped, and how long it took, in words
 */
export async function runSpecs(named) {
  const startMs = performance.now();
  const folder = await mkdtemp(join(tmpdir(), 'loadtrain-results-'));
  const file = join(folder, 'results.json');
  const args = [...JEST, '--json', `--outputFile=${file}`, ...named];
  const [status] = await once(spawn(process.execPath, args, { stdio: 'inherit' }), 'exit');
  const results = await readFile(file, 'utf8').then(JSON.parse, () => null);
  await rm(folder, { recursive: true });
  const took = `${((performance.now() - startMs) / 1000).toFixed(1)} s`;
  if (!results) return { passed: 0, failed: 1, skipped: 0, took };
  // A file that could not be run at all has no test of its own to count.
  const failed = Math.max(results.numFailedTests + results.numRuntimeErrorTestSuites, status === 0 ? 0 : 1);
  return { passed: results.numPassedTests, failed, skipped: results.numPendingTests + results.numTodoTests, took };
}
