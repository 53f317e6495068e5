import type { Page } from 'playwright-core';
import { TEST_PASSWORD } from '../support/lab.js';
import type { Hand } from './hands.js';
import { styled } from './hands.js';

/** What the people of the story have in their hands: one page each. */
export interface Cast {
  requester: Hand;
  manager: Hand;
  technician: Hand;
}

/** Called on every sheet that the story comes to. */
export type Look = (page: Page) => Promise<void>;

const glance: Look = async () => {};

export interface Told {
  reference: string;
  number: string;
}

export async function signIn(hand: Hand, role: string): Promise<void> {
  await hand.fill('E-mail', `${role}@northmoor.example`);
  await hand.fill('Password', TEST_PASSWORD);
  await hand.press('button', 'Sign in');
  await hand.page.getByRole('navigation', { name: 'Desks' }).waitFor();
}

/** A request from the form to its report, by whatever hands; on a lab with one train that is set up for ISO 527-2. */
export async function wholeStory(cast: Cast, title: string, look: Look): Promise<Told> {
  const reference = await handIn(cast.requester, title, look);
  await accept(cast.manager, title, look);
  await receive(cast.manager, reference, look);
  await run(cast.technician, look);
  const number = await report(cast.manager, reference, look);
  await read(cast.requester, reference, number, look);
  return { reference, number };
}

async function handIn(hand: Hand, title: string, look: Look): Promise<string> {
  const { page } = hand;
  await look(page);
  await signIn(hand, 'requester');
  await look(page);
  await hand.press('link', 'New request');
  await hand.fill('What do you want to find out?', title);
  await hand.choose('Method', 'ISO 527-2');
  await hand.choose('Material', 'PA 6 with 30 %');
  await hand.fill('Width', '5'); // 190 MPa × 5 mm × 4 mm = 3800 N at most: within a train of 5 kN, the margin of 20 % included
  await hand.fill('Specimens', '3');
  for (const result of ['Modulus', 'Strain at peak']) await hand.tick(new RegExp(`^${result}`, 'i'));
  await page.getByText(/^Fits: 1 of 1 frames/).waitFor();
  await look(page);
  await hand.press('button', 'Submit to the lab');
  await page.getByText(/R-\d+ is submitted/).waitFor();
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
  await look(page);
  return /R-\d+/.exec(await page.locator('h1').innerText())![0];
}

async function accept(hand: Hand, title: string, look: Look): Promise<void> {
  const { page } = hand;
  await signIn(hand, 'manager');
  await page.getByText(title).waitFor();
  await look(page);
  await hand.press('link', /^Review R-/);
  await page.getByText(/^Yes: \d+ load trains? pass/).waitFor();
  for (const point of [/^The method suits/, /^The lab can do it/, /^Specimens agreed/, /^Afterwards/])
    await hand.tick(point);
  await look(page);
  await hand.press('button', 'Accept');
  await page.getByText(/is accepted/).waitFor();
  await page.getByRole('heading', { name: 'Intake' }).waitFor();
}

async function receive(hand: Hand, reference: string, look: Look): Promise<void> {
  const { page } = hand;
  await hand.press('link', 'Arrivals');
  await hand.fill('Request on the bag', reference);
  await hand.press('button', 'Receive');
  await page.getByRole('button', { name: 'Receive 3 of 3' }).waitFor();
  await look(page);
  await hand.press('button', 'Receive 3 of 3');
  await page.getByText(/are in the lab/).waitFor();
}

async function run(hand: Hand, look: Look): Promise<void> {
  const { page } = hand;
  await signIn(hand, 'technician');
  await page.getByRole('button', { name: 'Take this job' }).waitFor({ timeout: 30_000 });
  await look(page);
  await hand.press('button', 'Take this job');
  await scanAll(page, look);
  await checkAll(hand, look);
  for (const [at, load] of ['1400', '1420', '1390'].entries()) {
    await page.locator(`${styled('specimen-tabs')} [aria-current=true]`, { hasText: `0${at + 1}` }).waitFor();
    for (const reading of [1, 2, 3]) {
      await hand.fill(`Width, reading ${reading}`, '5.0');
      await hand.fill(`Thickness, reading ${reading}`, '4.0');
    }
    await hand.fill(/^Peak load|^Maximum load|^Peak force/, load);
    await look(page);
    await hand.press('button', new RegExp(`^Save .*0${at + 1}`));
  }
  await finish(hand, look);
}

/** A result that was asked for and not taken has to have its reason, which stands on the report. */
async function explainWhatIsMissing(page: Page): Promise<void> {
  for (const reason of await page.getByLabel(/^Why there is no /).all()) await reason.fill('The recorder was off.');
}

/** Says how the room was, and ends the job. */
export async function finish(hand: Hand, look: Look = glance): Promise<void> {
  const { page } = hand;
  await hand.press('button', 'All done: finish');
  await hand.fill(/^Room temperature/, '23.1');
  await hand.fill(/^Relative humidity/, '50');
  await explainWhatIsMissing(page);
  await look(page);
  await hand.press('button', /^Finish J-/);
  await page.getByText('This job is done.').waitFor();
}

/** Every item is confirmed by its tag, as a barcode reader types it. */
export async function scanAll(page: Page, look: Look = glance): Promise<void> {
  const now = page.locator(`${styled('setup-steps')} li${styled('now')} ${styled('tag')}`);
  await now.waitFor();
  await look(page);
  for (let tag = await now.innerText(); ;) {
    await page.keyboard.type(tag);
    await page.keyboard.press('Enter');
    const next = now.filter({ hasNotText: tag }).or(page.locator(styled('checks')));
    await next.first().waitFor();
    if ((await now.count()) === 0) return;
    tag = await now.innerText();
  }
}

/** Works off the checks before the first specimen, and starts. */
export async function checkAll(hand: Hand, look: Look = glance): Promise<void> {
  const { page } = hand;
  const open = page.getByRole('button', { name: /checks? to go$/ });
  await page.locator(styled('checks')).waitFor();
  await look(page);
  for (let left = await leftOf(); left > 0;) {
    if (await page.getByLabel('Reference').isVisible()) {
      await hand.fill('Reference', '1000');
      await hand.fill(/ reads$/, '1001');
      await hand.press('button', 'Check');
    } else {
      await hand.press('button', 'Done');
    }
    const before = left;
    await page.waitForFunction((count) => {
      const text = document.querySelector('[class*="_bar_"] [class*="_go_"]')?.textContent ?? '';
      return !text.startsWith(`${count} check`);
    }, before);
    left = await leftOf();
  }
  await hand.press('button', 'Start the first specimen');

  async function leftOf(): Promise<number> {
    return (await open.count()) === 0 ? 0 : Number.parseInt(await open.innerText(), 10);
  }
}

async function report(hand: Hand, reference: string, look: Look): Promise<string> {
  const { page } = hand;
  await hand.press('link', 'Requests');
  await hand.press('link', new RegExp(reference));
  await hand.press('button', 'Prepare the report');
  await page.getByText('Nothing that ISO/IEC 17025:2017, 7.8 asks for is missing.').waitFor();
  await look(page);
  await hand.press('button', 'Authorise and issue');
  await page.getByRole('link', { name: 'PDF' }).waitFor({ timeout: 30_000 });
  await look(page);
  return /TR-\d{4}-\d{4}/.exec(await page.locator('h1').innerText())![0];
}

async function read(hand: Hand, reference: string, number: string, look: Look): Promise<void> {
  const { page } = hand;
  await page.getByText(reference).first().waitFor();
  await hand.press('link', new RegExp(`^${number}`));
  await page.getByRole('heading', { name: `Report ${number}` }).waitFor();
  await look(page);
}
