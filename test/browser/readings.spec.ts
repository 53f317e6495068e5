import type { Browser, Page } from 'playwright-core';
import { browserPath, signedIn, start, withoutBrowser } from '../support/browser.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { styled } from './hands.js';

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));

describe('figures that people read off something', () => {
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
    'of a calibration give class and range, by the force that was held, and none is left out in silence',
    async () => {
      const page = await signedIn(browser, lab, 'Ruth Calloway');

      await page.goto(`${lab.baseUrl}/register/items`);
      await page.getByLabel('Find').fill('LC-5K-1');
      await page.getByRole('link', { name: 'LC-5K-1', exact: true }).click();
      await page.locator('main a[href$="/calibrate"]').click();
      await page.getByLabel('Resolution, N').fill('0.5');
      for (const step of [1, 2, 3, 4, 5])
        for (const run of [1, 2, 3])
          await page.getByLabel(`Step ${step}, run ${run}`).fill(String(1000 * step * (1 + run / 10_000)));
      await page.getByLabel('Step 3, run 2').fill('three');
      await page.getByRole('button', { name: 'Work out class and range' }).click();
      await page.getByText('In tension: Step 3, run 2: "three" is not a number.').waitFor();
      await page.getByLabel('Step 3, run 2').fill('3000.6');
      await page.getByRole('button', { name: 'Work out class and range' }).click();
      await page.getByText('class 0.5').waitFor();
      // Indicated 1000 N at true forces of 1000.1, 1000.2 and 1000.3 N: q = (1000 − 1000.2)/1000.2 = −0.02 %.
      expect(await firstIndication(page)).toBeCloseTo(-0.02, 3);
      await page.getByLabel('Held at each step').selectOption({ index: 1 });
      await page.getByRole('button', { name: 'Work out class and range' }).click();
      await expect(untilIndicationIs(page, 0.02)).resolves.toBe(true);
    },
    60_000,
  );

  inBrowser(
    'at the bench are kept only when all of them can be read',
    async () => {
      const page = await signedIn(browser, lab, 'Tom Ashdown');

      await openJob(page, lab);
      const peak = page.getByLabel(/^Peak force/);
      await peak.fill('60,200');
      await page.getByRole('button', { name: /^Save / }).click();
      await page
        .getByText(/"60,200" can mean/)
        .first()
        .waitFor();
      expect(await peak.inputValue()).toBe('60,200');
    },
    60_000,
  );

  inBrowser(
    'by a machine are read by what a person says its columns are',
    async () => {
      const page = await signedIn(browser, lab, 'Tom Ashdown');

      await openJob(page, lab);
      const rows = Array.from({ length: 40 }, (_, n) => `${n * 0.1};${n * 0.01};${n * 100}`);
      const text = ['seconds (s);way (mm);what it pulls', ...rows].join('\n');
      await page
        .locator('#curve-file')
        .setInputFiles({ name: 'pull.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
      await page.getByRole('heading', { name: 'Is this how the file is meant?' }).waitFor();
      await page.getByLabel('What column 2 is').selectOption('travel of the crosshead');
      await page.getByLabel('Unit of column 2').selectOption('mm');
      await page.getByLabel('What column 3 is').selectOption('force');
      await page.getByLabel('Unit of column 3').selectOption('N');
      await page.getByRole('button', { name: 'Yes, read it like this' }).click();
      await page.getByRole('heading', { name: 'Is this how the file is meant?' }).waitFor({ state: 'detached' });
      await page.locator(`${styled('specimen-tabs')} [aria-current=true]`, { hasText: '05' }).waitFor();
    },
    60_000,
  );
});

/** A job of the demo lab that is on its frame, ready for its specimens. */
async function openJob(page: Page, lab: Lab): Promise<void> {
  await page.goto(`${lab.baseUrl}/bench`);
  await page
    .getByRole('link', { name: /J-2010-1/ })
    .first()
    .click();
  await page.locator('#curve-file').waitFor();
}

async function firstIndication(page: Page): Promise<number> {
  const column = await page
    .locator('th', { hasText: /^indication, %$/ })
    .evaluate((head) => (head as HTMLTableCellElement).cellIndex);
  const text = await page
    .locator('table:has(th:text-is("indication, %")) tbody tr')
    .first()
    .locator('td')
    .nth(column)
    .innerText();
  return Number(text.replace('−', '-'));
}

async function untilIndicationIs(page: Page, pct: number): Promise<boolean> {
  for (let tries = 0; tries < 50; tries++) {
    if (Math.abs((await firstIndication(page)) - pct) < 0.0005) return true;
    await page.waitForTimeout(100);
  }
  return false;
}
