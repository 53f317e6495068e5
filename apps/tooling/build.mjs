// Makes dist/: every source that changed since last time; the API's description and the web page when one of their sources did.
// --force makes all anew.
import { existsSync } from 'node:fs';
import { readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { buildSources } from './build-sources.mjs';
import { describeApi } from './describe-api.mjs';
import { newest } from './newest.mjs';

const PAGE = join('apps', 'web', 'index.html');
const BUILT = join('dist', 'web', 'index.html');
const FEEDS_THE_PAGE = [join('apps', 'web'), 'libs', join('.config', 'vite.config.mjs'), 'package-lock.json'];
const WORTH_COMPRESSING = /\.(js|css|svg)$/;

async function pageIsCurrent() {
  const times = await Promise.all(FEEDS_THE_PAGE.map(newest));
  return (await newest(BUILT)) > Math.max(...times);
}

async function buildPage() {
  if (!existsSync(PAGE) || (await pageIsCurrent())) return;
  const { build } = await import('vite');
  await build({ configFile: join('.config', 'vite.config.mjs'), logLevel: 'warn' });
  const assets = join('dist', 'web', 'assets');
  const files = (await readdir(assets))
    .filter((name) => WORTH_COMPRESSING.test(name))
    .map((name) => join(assets, name));
  await Promise.all(
    files.map(async (file) => writeFile(`${file}.gz`, await promisify(gzip)(await readFile(file), { level: 9 }))),
  );
  await utimes(BUILT, new Date(), new Date());
}

if (process.argv.includes('--force')) await rm('dist', { recursive: true, force: true });
await Promise.all([buildSources(['apps', 'libs', 'seed']).then(describeApi), buildPage()]);
