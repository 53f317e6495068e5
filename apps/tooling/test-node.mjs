// npm run test:node [-- PATH …]: the bar, or the specs that are named, on each supported version of Node besides the installed one.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const VERSIONS = ['22', '24'];
const bar = ['node', join('apps', 'tooling', 'bar.mjs'), ...process.argv.slice(2)];

const failed = VERSIONS.filter((version) => {
  console.log(`Node ${version}`);
  // The registry's package `node` is the program itself; npm keeps it in its cache.
  const args = ['exec', '--yes', `--package=node@${version}`, '--', ...bar];
  return spawnSync('npm', args, { stdio: 'inherit', shell: process.platform === 'win32' }).status !== 0;
});
if (failed.length > 0) {
  console.log(`failed on Node ${failed.join(' and ')}`);
  process.exitCode = 1;
}
