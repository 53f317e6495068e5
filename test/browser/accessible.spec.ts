import type { Browser, Page } from 'playwright-core';
import { browserPath, signedIn, start, withoutBrowser } from '../support/browser.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { faintWhenHovered } from './hovered.js';
import { spills } from './spills.js';
import { show, violationsInBothThemes } from './violations.js';
import { styled } from './hands.js';

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));

const MANAGER_SCREENS = [
  '/requests',
  '/requests/new',
  '/planning/intake',
  '/planning/arrivals',
  '/planning/lanes',
  '/planning/late',
  '/planning/trials',
  '/planning/help',
  '/planning/pools',
  '/planning/roster',
  '/bench',
  '/register/items',
  '/register/items/new',
  '/register/due',
  '/register/nonconformities',
  '/register/rigs',
  '/register/methods',
  '/register/materials',
  '/register/exchange',
  '/register/people',
  '/register/settings',
  '/register/record',
  '/register/status',
  '/reports',
  '/reports/history',
  '/notices',
  '/access',
];

/** Screens of one thing, reached by the first link of a list. */
const DETAILS = [
  ['/requests', `${styled('request-line')} a`],
  ['/planning/intake', 'tbody a'],
  ['/register/items', 'tbody a'],
] as const;

/** Goes to a screen as a link of the page does, without a reload, and waits until everything is fetched. */
async function settled(page: Page, path: string): Promise<void> {
  await page.evaluate((to) => history.pushState(null, '', to), path);
  await page.locator('main h1').waitFor();
  await fetched(page);
}

/** Opens the first thing of a list. */
async function openFirst(page: Page, [list, link]: (typeof DETAILS)[number]): Promise<void> {
  await settled(page, list);
  const heading = await page.locator('main h1').innerText();
  await page.locator(link).first().click();
  await page.locator('main h1').filter({ hasNotText: heading }).waitFor();
  await fetched(page);
}

async function fetched(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('[class*="_loading-line_"]') === null);
}

describe('the screens', () => {
  let lab: Lab;
  let browser: Browser;

  beforeAll(async () => {
    if (withoutBrowser(path)) return;
    lab = await startLab({ filled: 'demo' });
    browser = await start(path!);
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    await lab?.stop();
  }, 60_000);

  inBrowser(
    'have no violation of WCAG 2.2 A and AA in light and in dark, by an automated checker',
    async () => {
      const page = await signedIn(browser, lab, 'Ruth Calloway');
      const found: string[] = [];
      for (const screen of MANAGER_SCREENS) {
        await settled(page, screen);
        found.push(...(await violationsInBothThemes(page)));
      }
      for (const detail of DETAILS) {
        await openFirst(page, detail);
        found.push(...(await violationsInBothThemes(page)));
      }
      expect(found).toEqual([]);
    },
    300_000,
  );

  inBrowser(
    'keep the contrast of their buttons and links while the pointer is over them',
    async () => {
      const page = await signedIn(browser, lab, 'Ruth Calloway');
      const found: string[] = [];
      for (const screen of [
        '/requests',
        '/planning/lanes',
        '/planning/roster',
        '/bench',
        '/register/rigs',
        '/notices',
      ]) {
        await settled(page, screen);
        // A brief message with its button stands over the screen.
        if (screen === '/notices') await page.getByLabel('Mails').selectOption({ index: 1 });
        if (screen === '/notices') await page.getByRole('button', { name: 'Dismiss' }).waitFor();
        for (const theme of ['light', 'dark']) {
          await show(page, theme);
          found.push(...(await faintWhenHovered(page)).map((each) => `${theme}: ${each}`));
        }
      }
      expect(found).toEqual([]);
    },
    120_000,
  );

  inBrowser(
    'let nothing run out of its box on a desk and on a tablet, upright and across',
    async () => {
      const page = await signedIn(browser, lab, 'Ruth Calloway');
      const found: string[] = [];
      const look = async () => {
        for (const width of [1280, 1024, 820]) {
          await page.setViewportSize({ width, height: 800 });
          found.push(...(await spills(page)).map((spill) => `${width} px: ${spill}`));
        }
      };
      for (const screen of [...MANAGER_SCREENS, '/planning/nothing']) {
        await settled(page, screen);
        await look();
      }
      for (const detail of DETAILS) {
        await openFirst(page, detail);
        await look();
      }
      expect(found).toEqual([]);
    },
    120_000,
  );
});
