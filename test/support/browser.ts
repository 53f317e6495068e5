import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import type { Lab } from './lab.js';
import { projectRoot } from './maybe.js';

const INSTALLED = '/usr/bin/chromium';

/** Where a browser is that can be started here: the one that comes as a package, else an installed one; null for none. */
export async function browserPath(): Promise<string | null> {
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    const path = await packaged.executablePath();
    const browser = await start(path);
    await browser.close();
    return path;
  } catch {
    return existsSync(INSTALLED) ? INSTALLED : null;
  }
}

/** Why stories in a browser cannot run here; null when they can. */
export function withoutBrowser(path: string | null): string | null {
  if (path === null)
    return 'no browser starts here: the packaged one needs libnss3, an installed one is /usr/bin/chromium; on Debian: apt-get install chromium';
  if (!existsSync(join(projectRoot(), 'dist', 'web', 'index.html'))) return 'the web page is not built';
  return null;
}

export function start(executablePath: string): Promise<Browser> {
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
}

/**
 * A page on which somebody is signed in, through the door as a person would.
 *
 * @param name as the demo lab offers it on the sign-in page
 */
export async function signedIn(
  browser: Browser,
  lab: Lab,
  name: string,
  options: BrowserContextOptions = {},
): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(lab.baseUrl);
  await page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
  await page.getByRole('navigation', { name: 'Desks' }).waitFor();
  return page;
}

/** A page at the door, for who comes in with address and password. */
export async function atTheDoor(browser: Browser, lab: Lab, options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(lab.baseUrl);
  await page.getByRole('heading', { name: 'Loadtrain' }).waitFor();
  return page;
}
