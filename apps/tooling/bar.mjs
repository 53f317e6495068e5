// npm test: the whole bar. With a path, or any other argument for Jest: only the specs that it names.
// The checks that need no database run one after another beside the specs, with less claim on the processor.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setPriority } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { runSpecs } from './specs.mjs';

process.chdir(fileURLToPath(new URL('../..', import.meta.url)));

const bin = (name, ...path) => join('node_modules', name, ...path);
const KNIP = [bin('knip', 'bin', 'knip.js'), '-c', join('.config', 'knip.config.js'), '--no-progress'];
const CHECKS = {
  types: [bin('typescript-7', 'bin', 'tsc'), '--noEmit', '--incremental', 'false'],
  reachable: [...KNIP, '--production'],
  'used at all': KNIP,
  format: [bin('prettier', 'bin', 'prettier.cjs'), '--check', '--log-level', 'warn', '.'],
  lint: [bin('eslint', 'bin', 'eslint.js'), '-c', join('.config', 'eslint.config.mjs'), '.'],
};
const AFTER_THE_SPECS = 10;

const since = (startMs) => `${((performance.now() - startMs) / 1000).toFixed(1)} s`;

/** Runs a step to its end; what it says is kept together, and shown when it went wrong. */
async function check(name, args) {
  const startMs = performance.now();
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  setPriority(child.pid, AFTER_THE_SPECS);
  const [out, err, [status]] = await Promise.all([text(child.stdout), text(child.stderr), once(child, 'exit')]);
  const line = `${name.padEnd(12)} ${status === 0 ? 'passed' : 'FAILED'} ${since(startMs).padStart(8)}`;
  if (status !== 0) console.log(`${out}${err}`);
  console.log(line);
  return { line, passed: status === 0 };
}

async function checkAll() {
  const done = [];
  for (const [name, args] of Object.entries(CHECKS)) done.push(await check(name, args));
  return done;
}

async function build() {
  const [status] = await once(
    spawn(process.execPath, [join('apps', 'tooling', 'build.mjs')], { stdio: 'inherit' }),
    'exit',
  );
  return status === 0;
}

const named = process.argv.slice(2);
const startMs = performance.now();
if (!(await build())) {
  console.log('0 passed, 1 failed, 0 skipped');
  process.exit(1);
}
const [specs, checks] = await Promise.all([runSpecs(named), named.length > 0 ? [] : checkAll()]);
const failed = specs.failed + checks.filter(({ passed }) => !passed).length;
const passed = specs.passed + checks.filter(({ passed }) => passed).length;
for (const { line } of checks) console.log(line);
console.log(`${'specs'.padEnd(12)} ${specs.failed === 0 ? 'passed' : 'FAILED'} ${specs.took.padStart(8)}`);
console.log(`${'all'.padEnd(12)} ${failed === 0 ? 'passed' : 'FAILED'} ${since(startMs).padStart(8)}`);
console.log(`${passed} passed, ${failed} failed, ${specs.skipped} skipped`);
process.exitCode = failed === 0 ? 0 : 1;
