import type { Browser, Page } from 'playwright-core';
import { browserPath, signedIn, start, withoutBrowser } from '../support/browser.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { styled } from './hands.js';

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));

/** Chooses the entry of a list that begins so. */
async function choose(page: Page, label: string, beginning: string): Promise<void> {
  const list = page.getByLabel(label, { exact: true });
  const option = list
    .locator('option')
    .filter({ hasText: new RegExp(`^${beginning}`) })
    .first();
  await list.selectOption(await option.getAttribute('value'));
}

/** What the form says under a field. */
function remark(page: Page, label: string) {
  return page
    .locator(styled('field'))
    .filter({ has: page.getByLabel(label, { exact: true }) })
    .locator(styled('wrong'));
}

describe('the request form, filled wrong in ten ordinary ways', () => {
  let lab: Lab;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    if (withoutBrowser(path)) return;
    lab = await startLab({ filled: 'demo' });
    browser = await start(path!);
    page = await signedIn(browser, lab, 'Sam Whitlock');
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    await lab?.stop();
  }, 60_000);

  beforeEach(async () => {
    if (withoutBrowser(path)) return;
    await page.evaluate(() => localStorage.clear());
    await page.goto(`${lab.baseUrl}/requests/new`);
    await choose(page, 'Method', 'ISO 178');
    await page.getByLabel('What do you want to find out?').fill('Flexural strength of a bracket compound');
  }, 60_000);

  const verdict = () => page.getByText(/^Fits: \d+ of \d+ frames can run it|^No load train of the lab/).first();

  inBrowser(
    '1: a width of nothing is marked with what is allowed',
    async () => {
      await page.getByLabel('Width', { exact: true }).fill('0');
      expect(await remark(page, 'Width').textContent()).toMatch(/Width may be .* to .* mm/);
    },
    60_000,
  );

  inBrowser(
    '2: letters in a figure are refused at once',
    async () => {
      await page.getByLabel('Thickness', { exact: true }).fill('four');
      expect(await remark(page, 'Thickness').textContent()).not.toBe('');
    },
    60_000,
  );

  inBrowser(
    '3: a figure that can be read in two ways asks back',
    async () => {
      await page.getByLabel('Width', { exact: true }).fill('1,234');
      expect(await remark(page, 'Width').count()).toBe(1);
    },
    60_000,
  );

  inBrowser(
    '4: the right figure in the wrong unit is out of bounds in that unit',
    async () => {
      await page.getByLabel('Unit of Width').selectOption('m');
      expect(await remark(page, 'Width').textContent()).toMatch(/ m\.$/);
    },
    60_000,
  );

  inBrowser(
    '5: an empty figure that is needed is asked for when one submits',
    async () => {
      await page.getByLabel('Thickness', { exact: true }).fill('');
      await page.getByRole('button', { name: 'Submit to the lab' }).click();
      await remark(page, 'Thickness').waitFor();
      expect(await remark(page, 'Thickness').textContent()).toContain('needed');
    },
    60_000,
  );

  inBrowser(
    '6: without material or strength the form says what is missing',
    async () => {
      await page
        .locator(`${styled('wrong')}, ${styled('note-act')}, ${styled('state')}`)
        .filter({ hasText: /material|strength|load|figure/i })
        .first()
        .waitFor();
    },
    60_000,
  );

  inBrowser(
    '7: a strength band upside down is turned back',
    async () => {
      await page.getByText('Load, if you know it better').click();
      await page.getByLabel('Strength band (optional)', { exact: true }).fill('120');
      await page.getByLabel('Strength band, highest').fill('80');
      expect(await remark(page, 'Strength band (optional)').textContent()).toContain('lower figure comes first');
    },
    60_000,
  );

  inBrowser(
    '8: a load that no frame carries is answered with why, frame by frame',
    async () => {
      await page.getByText('Load, if you know it better').click();
      await page.getByLabel('Highest load expected (optional)', { exact: true }).fill('900');
      await page.getByLabel('Highest load expected, highest').fill('950');
      await page.getByLabel('Unit of Highest load expected').selectOption('kN');
      await page.getByText('No load train of the lab can run it as it stands.').waitFor();
      await page.getByRole('heading', { name: 'Why no frame fits' }).waitFor();
    },
    60_000,
  );

  inBrowser(
    '9: no result ticked is refused at the results',
    async () => {
      await choose(page, 'Material', 'P');
      await verdict().waitFor();
      const ticked = page.getByRole('group', { name: 'Results' }).getByRole('checkbox', { checked: true });
      while ((await ticked.count()) > 0) await ticked.first().uncheck();
      await page.getByRole('group', { name: 'Results' }).locator(styled('wrong')).waitFor();
    },
    60_000,
  );

  inBrowser(
    '10: a request without a title is not taken, and nothing typed is lost',
    async () => {
      await choose(page, 'Material', 'P');
      await verdict().waitFor();
      await page.getByLabel('What do you want to find out?').fill('');
      await page.getByRole('button', { name: 'Submit to the lab' }).click();
      await remark(page, 'What do you want to find out?').waitFor();
      await page.reload();
      expect(await page.getByLabel('Width', { exact: true }).inputValue()).not.toBe('');
    },
    60_000,
  );

  inBrowser(
    '11: a due date that is over is marked before anything is sent',
    async () => {
      await choose(page, 'Material', 'P');
      await page.getByLabel('Due (optional)').fill('2020-01-06');
      await page.getByRole('button', { name: 'Submit to the lab' }).click();
      expect(await remark(page, 'Due (optional)').textContent()).toContain('still to come');
      expect(new URL(page.url()).pathname).toBe('/requests/new');
    },
    60_000,
  );

  inBrowser(
    '12: a limit that cannot be read is marked, and its unit is that of the result',
    async () => {
      await choose(page, 'Material', 'P');
      await page.getByText('State whether they conform to a specification').click();
      await page.getByLabel('At least, MPa (optional)').fill('8 %');
      await page.getByRole('button', { name: 'Submit to the lab' }).click();
      expect(await remark(page, 'At least, MPa (optional)').textContent()).toContain('not a number');
      expect(new URL(page.url()).pathname).toBe('/requests/new');
    },
    60_000,
  );

  inBrowser(
    'a form that is right says when it would be done, and another method leaves nothing of the first',
    async () => {
      await choose(page, 'Material', 'P');
      await page.getByText(/^If it came now: done by/).waitFor();
      expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('10');
      await choose(page, 'Method', 'ISO 8510-2');
      await page.getByLabel('Support span').waitFor({ state: 'detached' });
      expect(await page.getByLabel('Width', { exact: true }).inputValue()).toBe('25');
    },
    60_000,
  );
});
