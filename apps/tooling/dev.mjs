// npm run dev: the lab with reload on change, at one address. Vite serves the page and hands /api on; the server starts anew when one of
// the files that it is made of was written. Settings are those of `npm start`, so that both work on the same data.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { watch } from 'node:fs';
import { createServer as createProbe } from 'node:net';
import { join, sep } from 'node:path';
import { buildSources } from './build-sources.mjs';
import { describeApi, keepTypes } from './describe-api.mjs';

const ROOTS = ['apps', 'libs', 'seed'];
const SETTLED_MS = 100; // an editor writes a file more than once
const TYPES_AFTER_MS = 2_000; // the API's description takes seconds: it waits until nobody types
const OF_THE_PAGE = join('apps', 'web') + sep;

async function freePort() {
  const probe = createProbe().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address();
  probe.close();
  await once(probe, 'close');
  return port;
}

async function build() {
  await buildSources(ROOTS).catch((error) => console.error(error.message)); // half-typed code: the next write mends it
}

async function describe() {
  await describeApi().catch((error) => console.error(error.message));
  await keepTypes();
}

const port = Number(process.env.PORT ?? 3000);
const host = process.env.HOST ?? '127.0.0.1';
const apiPort = await freePort();
process.env.LOADTRAIN_API = `http://127.0.0.1:${apiPort}`;

await build();
await describe();

const { createServer } = await import('vite');
const page = await createServer({
  configFile: join('.config', 'vite.config.mjs'),
  logLevel: 'warn',
  server: { port, host, strictPort: true },
});
await page.listen();

// Node looks after the files itself: it starts the lab anew when one that was loaded changes.
const lab = spawn(
  process.execPath,
  ['--watch', '--watch-preserve-output', '--enable-source-maps', join('dist', 'apps', 'solo', 'src', 'main.js')].concat(
    process.argv.slice(2),
  ),
  {
    stdio: 'inherit',
    env: { PUBLIC_URL: `http://localhost:${port}`, ...process.env, PORT: String(apiPort), HOST: '127.0.0.1' },
  },
);

let building = null;
let describing = null;
for (const root of ROOTS) {
  watch(root, { recursive: true }, (_, name) => {
    const file = join(root, name ?? '');
    if (file.startsWith(OF_THE_PAGE) || /\.spec\.tsx?$/.test(file)) return;
    clearTimeout(building);
    clearTimeout(describing);
    building = setTimeout(build, SETTLED_MS);
    describing = setTimeout(describe, TYPES_AFTER_MS);
  });
}

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, async () => {
    lab.kill('SIGTERM');
    await Promise.all([page.close(), lab.exitCode === null && lab.signalCode === null ? once(lab, 'exit') : null]);
    process.exit(0);
  });
}
