// Makes dist/description/ anew when a source of the API or of a lib changed: the OpenAPI document, and types for the page's calls.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { newest } from './newest.mjs';

const WRITER = join('dist', 'apps', 'api', 'src', 'description', 'write.js');
const WRITTEN = join('dist', 'description', 'openapi.json');
const FEEDS_IT = [join('apps', 'api'), 'libs', 'tsconfig.json', 'package-lock.json'];

/** The compiled sources have to be there. */
export async function describeApi() {
  const times = await Promise.all(FEEDS_IT.map(newest));
  if ((await newest(WRITTEN)) > Math.max(...times)) return;
  const [status] = await once(spawn(process.execPath, ['--enable-source-maps', WRITER], { stdio: 'inherit' }), 'exit');
  if (status !== 0) throw new Error('The description of the API was not written.');
}
