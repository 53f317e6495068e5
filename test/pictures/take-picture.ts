import type { Browser, Locator, Page } from 'playwright-core';
import { mouse } from '../browser/hands.js';
import { show } from '../browser/violations.js';
import type { Picture } from './pictures.js';

/** The most that a picture in README may weigh. */
export const MOST_BYTES = 150_000;

const WIDTH_PX = 1280;
const THEMES = ['light', 'dark'] as const;
const QUALITIES = [95, 90, 85, 80, 70, 60, 50];
const SETTLED_MS = 2_000; // drawings, and what is fetched last

/** Goes the way of a picture once, and takes it in both themes. */
export async function takePicture(browser: Browser, address: string, now: Date, picture: Picture) {
  const { person, height, only, go } = picture;
  const context = await browser.newContext({
    viewport: { width: WIDTH_PX, height },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.clock.setSystemTime(now);
  await page.goto(address);
  if (person) {
    await page.getByRole('button', { name: new RegExp(`^${person}`) }).click();
    await page.getByRole('navigation', { name: 'Desks' }).waitFor();
  }
  await go(mouse(page));
  await page.waitForTimeout(SETTLED_MS);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  const clip = await shown(only ? only(page) : page.locator('html'), height);
  const taken = [];
  for (const theme of THEMES) {
    await choose(page, theme);
    taken.push({ theme, bytes: await webp(page, clip) });
  }
  await context.close();
  return taken;
}

/** Chooses a theme by the switch of the page, which then offers the other one; in front of the door there is none. */
async function choose(page: Page, theme: (typeof THEMES)[number]): Promise<void> {
  if ((await page.getByRole('navigation', { name: 'Desks' }).count()) === 0) return show(page, theme);
  const offer = page.getByRole('button', { name: theme === 'dark' ? 'Dark' : 'Light', exact: true });
  // Not by the pointer, which would stay on it, nor by what scrolls the page to it.
  if ((await offer.count()) > 0) await offer.evaluate((button: HTMLElement) => button.click());
}

/** The part of the window that an element fills, px of the document. */
function shown(element: Locator, height: number) {
  return element.evaluate((found, bottom) => {
    const { left, right, top } = found.getBoundingClientRect();
    const y = Math.max(0, top);
    return { x: left, y: y + window.scrollY, width: right - left, height: bottom - y, scale: 1 };
  }, height);
}

/** What the window shows, as good as fits. @throws Error when it fits in no quality */
async function webp(page: Page, clip: Awaited<ReturnType<typeof shown>>): Promise<Buffer> {
  const devtools = await page.context().newCDPSession(page);
  for (const quality of QUALITIES) {
    const { data } = await devtools.send('Page.captureScreenshot', { format: 'webp', quality, clip });
    const bytes = Buffer.from(data, 'base64');
    if (bytes.length <= MOST_BYTES) return bytes;
  }
  throw new Error(`A picture of ${page.url()} weighs more than ${MOST_BYTES} bytes however it is taken.`);
}
