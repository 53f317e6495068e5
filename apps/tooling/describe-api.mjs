// Makes dist/description/ anew when a source of the API or of a lib changed: the OpenAPI document, and types for the page's calls.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFile, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { newest } from './newest.mjs';

const WRITER = join('dist', 'apps', 'api', 'src', 'description', 'write.js');
const WRITTEN = join('dist', 'description', 'openapi.json');
const TYPES = join('dist', 'description', 'operations.ts');
const FEEDS_IT = [join('apps', 'api'), 'libs', 'tsconfig.json', 'package-lock.json'];

/** The compiled sources have to be there. */
export async function describeApi() {
  const times = await Promise.all(FEEDS_IT.map(newest));
  if ((await newest(WRITTEN)) > Math.max(...times)) return;
  const [status] = await once(spawn(process.execPath, ['--enable-source-maps', WRITER], { stdio: 'inherit' }), 'exit');
  if (status !== 0) throw new Error('The description of the API was not written.');
  await writeFile(TYPES, await formatted(await readFile(TYPES, 'utf8')));
}

async function formatted(code) {
  const { format, resolveConfig } = await import('prettier');
  return format(code, { ...(await resolveConfig('package.json')), parser: 'typescript' });
}

/** Puts the types of the page's calls into the tree, where they belong to what is committed. */
export async function keepTypes() {
  const kept = join('apps', 'web', 'src', 'api-client', 'operations.ts');
  const [fresh, old] = await Promise.all([TYPES, kept].map((file) => readFile(file, 'utf8').catch(() => '')));
  if (fresh !== old) await copyFile(TYPES, kept);
}
