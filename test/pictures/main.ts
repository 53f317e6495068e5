import { once } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserPath, start, withoutBrowser } from '../support/browser.js';
import { projectRoot } from '../support/maybe.js';
import { freePort, heard, isReady, runSolo } from '../support/solo.js';
import { until } from '../support/until.js';
import { PICTURES } from './pictures.js';
import { takePicture } from './take-picture.js';

/**
 * `npm run pictures [-- NAME …]`: takes the pictures of README anew, or those named, in a real browser. They show the demo lab as
 * `npm start` opens it, on a port and a data folder of its own, and are written beside this file.
 */
const CLOCK = '2026-12-01T10:12:00Z'; // always the same working morning, so that a new picture differs only where the product does
const OPEN_WITHIN_MS = 180_000;
const folder = join(projectRoot(), 'test', 'pictures');
const wanted = process.argv.slice(2);

const path = await browserPath();
const missing = withoutBrowser(path);
if (path === null || missing !== null) {
  console.error(`No picture is taken: ${missing}`);
  process.exit(1);
}
const data = await mkdtemp(join(tmpdir(), 'loadtrain-pictures-'));
const port = await freePort();
const lab = runSolo(data, port, [], { LOADTRAIN_CLOCK: CLOCK });
heard(lab);
const browser = await start(path);
try {
  const address = `http://127.0.0.1:${port}`;
  await until(() => isReady(address), OPEN_WITHIN_MS);
  for (const picture of PICTURES.filter(({ name }) => wanted.length === 0 || wanted.includes(name))) {
    for (const { theme, bytes } of await takePicture(browser, address, new Date(CLOCK), picture)) {
      await writeFile(join(folder, `${picture.name}-${theme}.webp`), bytes);
      console.log(`${picture.name}, ${theme}: ${Math.ceil(bytes.length / 1000)} kB`);
    }
  }
} finally {
  await browser.close();
  const gone = once(lab, 'exit');
  if (lab.exitCode === null && lab.kill('SIGTERM')) await gone;
  await rm(data, { recursive: true });
}
