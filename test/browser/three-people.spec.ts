import type { Browser, Page } from 'playwright-core';
import { browserPath, signedIn, start, withoutBrowser } from '../support/browser.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { styled } from './hands.js';

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));
const TABLET = { viewport: { width: 1024, height: 768 }, hasTouch: true };
const LONG_MS = 240_000;

async function choose(page: Page, label: string, beginning: string): Promise<void> {
  const list = page.getByLabel(label, { exact: true });
  const option = list
    .locator('option')
    .filter({ hasText: new RegExp(`^${beginning}`) })
    .first();
  await list.selectOption(await option.getAttribute('value'));
}

/** A barcode reader types what it reads and presses Enter. */
async function scan(page: Page, tag: string): Promise<void> {
  await page.keyboard.type(tag, { delay: 4 });
  await page.keyboard.press('Enter');
}

describe('three people in a browser', () => {
  let lab: Lab;
  let browser: Browser;
  let reference = '';

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
    'a requester asks for a test and sees which trains fit before submitting',
    async () => {
      const page = await signedIn(browser, lab, 'Sam Whitlock');
      await page.getByRole('link', { name: 'New request' }).first().click();
      await page.getByLabel('What do you want to find out?').fill('Strip strength of a new tent fabric');
      await choose(page, 'Method', 'ISO 13934-1');
      await choose(page, 'Material', 'Woven');
      await page.getByText(/^Fits: \d+ of \d+ frames can run it/).waitFor();
      await page.getByRole('figure', { name: 'Force ladder' }).waitFor();
      await page.getByRole('button', { name: 'Submit to the lab' }).click();
      const heading = page.getByRole('heading', { level: 1, name: /^R-\d+ Strip strength/ });
      await heading.waitFor();
      reference = (await heading.innerText()).split(' ')[0]!;
      await page.getByText('submitted', { exact: true }).first().waitFor();
      await page.context().close();
    },
    LONG_MS,
  );

  inBrowser(
    'the manager settles every point, accepts it, and its specimens are received',
    async () => {
      const page = await signedIn(browser, lab, 'Ruth Calloway');
      await page.getByRole('link', { name: `Review ${reference}` }).click();
      await page.getByText(/^Yes: \d+ load trains pass every rule/).waitFor();
      await page.getByRole('button', { name: 'Accept' }).click();
      await page.getByRole('alert').waitFor();
      for (const point of await page.locator(`${styled('framed')} ${styled('tick')}`).all()) await point.click();
      await page.getByRole('button', { name: 'Accept' }).click();
      await page.getByText(`${reference} is accepted.`).waitFor();
      await page.getByRole('link', { name: 'Arrivals' }).click();
      await page.getByLabel('Request on the bag').fill(reference);
      await page.getByRole('button', { name: 'Receive' }).click();
      await page.getByRole('button', { name: /^Receive \d+ of \d+$/ }).click();
      await page.getByText(`of ${reference} are in the lab.`).waitFor();
      await page.context().close();
    },
    LONG_MS,
  );

  inBrowser(
    'a technician runs a job with a barcode reader; the network is cut twice, and nothing is lost or done twice',
    async () => {
      const page = await signedIn(browser, lab, 'Olu Adeyemi', TABLET);
      await page.getByRole('button', { name: 'Take this job' }).click({ timeout: 60_000 });
      await page.locator(styled('bench-head')).waitFor();
      await scan(page, 'NO-SUCH-TAG');
      await page.locator(styled('wrong')).waitFor();
      const next = page.locator(`${styled('setup-steps')} li${styled('now')} ${styled('tag')}`);
      while ((await next.count()) > 0) {
        const tag = await next.innerText();
        await scan(page, tag);
        await page
          .locator(`${styled('setup-steps')} li${styled('now')} ${styled('tag')}`)
          .filter({ hasText: tag })
          .waitFor({ state: 'detached' });
      }
      await everyCheck(page);

      await page.context().setOffline(true);
      await page.getByRole('button', { name: 'Start the first specimen' }).click();
      await page.getByText('saved on this device').waitFor();
      await page.context().setOffline(false);
      await page.locator(styled('specimen-tabs')).waitFor();

      for (const input of await page.locator(`${styled('reading-row')} input`).all()) await input.fill('10');
      for (const input of await page.locator(`${styled('result-row')} input`).all()) await input.fill('100');
      await page.context().setOffline(true);
      await page.getByRole('button', { name: /^Save/ }).click();
      await page.getByText('saved on this device').waitFor();
      await page.context().setOffline(false);
      await page.locator(`${styled('specimen-tabs')} ${styled('tested')}`).waitFor();
      expect(await page.locator(`${styled('specimen-tabs')} ${styled('tested')}`).count()).toBe(1);

      await page.getByRole('button', { name: /is invalid/ }).click();
      await page.getByRole('button', { name: 'Slipped' }).click();
      await page.getByRole('button', { name: /^Mark .* as invalid$/ }).click();
      await page.locator(`${styled('specimen-tabs')} ${styled('invalid')}`).waitFor();

      await page.getByRole('button', { name: /Finish|All done/ }).click();
      await page.getByLabel('Room temperature, °C').fill('23.1');
      await page.getByLabel('Relative humidity, %').fill('49');
      const open = page.getByLabel(/^Why \d+ specimens? (is|are) not tested/);
      if ((await open.count()) > 0) await open.fill('Two are enough for this story');
      await page.getByRole('button', { name: /^Finish J-/ }).click();
      await page.getByText('This job is done.').waitFor();
      await page.context().close();
    },
    LONG_MS,
  );

  inBrowser(
    'the manager takes a frame down for two days in a trial plan, compares and publishes it',
    async () => {
      const page = await signedIn(browser, lab, 'Ruth Calloway');
      await page.getByRole('link', { name: 'Frame lanes' }).click();
      await page.getByRole('button', { name: 'Try a change' }).click({ timeout: 60_000 });
      await page.getByLabel('Frame', { exact: true }).selectOption({ index: 1 });
      await page.getByLabel('Why', { exact: true }).fill('Crosshead belt');
      await page.getByRole('button', { name: 'Try it' }).click();
      await page.getByRole('heading', { name: 'Against a plan without these changes' }).waitFor({ timeout: 90_000 });
      await page.getByRole('button', { name: /^Publish/ }).click();
      await page.getByText('The trial plan is published.').waitFor();
      await page.context().close();
    },
    LONG_MS,
  );
});

/** Ticks every open check; the shift check with a reading well within its tolerance. */
async function everyCheck(page: Page): Promise<void> {
  const now = page.locator(`${styled('checks')} li${styled('now')}`);
  await now.first().waitFor();
  while ((await now.count()) > 0) {
    const name = await now.locator('strong').first().innerText();
    if (await now.getByLabel('Reference').count()) await checkCell(page);
    else await now.getByRole('button', { name: 'Done' }).click();
    await page
      .locator(`${styled('checks')} li${styled('now')} strong`)
      .filter({ hasText: name })
      .waitFor({ state: 'detached' });
  }
}

/** Half the capacity of the cell, read with an error of 0.1 %. */
async function checkCell(page: Page): Promise<void> {
  const text = await page.locator(`${styled('checks')} li${styled('now')}`).innerText();
  const capacity = Number(/carries ([\d\s]+)/.exec(text)?.[1]?.replace(/\s/g, ''));
  const reference = capacity / 2;
  await page.getByLabel('Reference').fill(String(reference));
  await page.getByLabel(/ reads$/).fill(String(reference * 1.001));
  await page.getByRole('button', { name: 'Check', exact: true }).click();
}
