import { MS_PER_DAY, MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { jest } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import type { ImpactView, PlanView } from '#libs/contract/src/index.js';
import { DEMO_PASSWORD } from '#libs/records/src/index.js';
import { browserPath, signedIn, start, withoutBrowser } from '../support/browser.js';
import type { Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { until } from '../support/until.js';
import { setUpLab } from '../stories/story-steps.js';
import { mouse, styled } from './hands.js';
import { violationsInBothThemes } from './violations.js';
import { labClock } from '../support/lab-clock.js';

jest.setTimeout(240_000);

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));
const NIGHT_MS = 8 * MS_PER_HOUR;
const FAILED_CELL = 'LC-1K-2'; // its shift check failed in the demo lab

const GIVEN_AWAY = 0.1;

describe('the manager, on a screen 1280 px wide', () => {
  let lab: Lab;
  let browser: Browser;
  let api: Client;

  beforeAll(async () => {
    if (withoutBrowser(path)) return;
    lab = await startLab({ filled: 'demo' });
    api = await lab.signIn('ruth.calloway@northmoor.example', DEMO_PASSWORD);
    await setUpLab(api, { planningSeconds: 3 });
    browser = await start(path!);
  });
  afterAll(async () => {
    await browser?.close();
    await lab?.stop();
  });

  inBrowser('finds in fewer than five clicks what an out-of-tolerance cell touched', async () => {
    const page = await signedIn(browser, lab, 'Ruth Calloway');
    const clicks = await countClicks(page);
    const hand = mouse(page);
    await hand.press('link', 'Register');
    await hand.press('link', 'Nonconformities');
    await hand.press('link', FAILED_CELL);
    await hand.press('link', 'What it touched');
    await page.getByRole('heading', { name: `What ${FAILED_CELL} touched` }).waitFor();
    expect(await clicks()).toBeLessThan(5);
    const itemId = /items\/([^/]+)\/impact/.exec(page.url())![1]!;
    const { body } = await api.get<ImpactView>(`/items/${itemId}/impact`);
    expect(body.jobs.length).toBeGreaterThan(0);
    expect(body.reports.length + body.people.length).toBeGreaterThan(0);
    for (const { reference, requestReference } of body.jobs) {
      await page.getByRole('row', { name: new RegExp(`${reference}.*${requestReference}`) }).waitFor();
    }
    for (const { number } of body.reports)
      await page
        .getByText(new RegExp(`^${number}, revision`))
        .first()
        .waitFor();
    for (const { name } of body.people) await page.getByText(name).first().waitFor();
    const found = await violationsInBothThemes(page);
    for (const sheet of [
      `/register/items/${itemId}/calibrate`,
      `/register/items/${itemId}/edit`,
      `/reports/labels/item?of=${FAILED_CELL}`,
      `/verify/${body.reports[0]?.number ?? 'TR-0'}`,
    ]) {
      await page.goto(lab.baseUrl + sheet);
      await page.getByRole('heading', { level: 1 }).waitFor();
      found.push(...(await violationsInBothThemes(page)));
    }
    expect(found).toEqual([]);
    await page.context().close();
  });

  inBrowser('resolves an overload in a trial plan when a frame is down for two days, and publishes it', async () => {
    const page = await signedIn(browser, lab, 'Ruth Calloway');
    const hand = mouse(page);
    const before = await published();
    await hand.press('link', 'Planning');
    await hand.press('link', 'Frame lanes');
    await hand.press('button', 'Try a change');
    await page.getByRole('heading', { name: 'Changes tried' }).waitFor();

    const opening = nextOpening(labClock.nowMs() + NIGHT_MS);
    const down = { from: opening, until: opening + 2 * MS_PER_DAY };
    const missed = mostMissedLane(before, down);
    await hand.choose('Try', 'Take a frame down');
    await hand.choose('Frame', missed.frame.tag);
    await hand.fill('From', local(down.from));
    await hand.fill('Until', local(down.until));
    await hand.fill('Why', 'The crosshead drive is repaired');
    await hand.press('button', 'Try it');
    await page.getByText(`${missed.frame.tag} down from`).waitFor();
    await page.getByRole('heading', { name: 'Against a plan without these changes' }).waitFor({ timeout: 90_000 });
    const worse = await figure(page, 'Weighted lateness');

    await hand.choose('Try', 'Open a frame longer');
    await hand.choose('Frame', missed.frame.tag);
    await hand.choose('Technician', 'Tom Ashdown');
    await hand.fill('From', local(opening - NIGHT_MS));
    await hand.fill('Until', local(opening));
    await hand.press('button', 'Try it');
    await page.getByText(`${missed.frame.tag} also open from`).waitFor();
    await page.getByRole('heading', { name: 'Against a plan without these changes' }).waitFor({ timeout: 90_000 });
    const helped = await figure(page, 'Weighted lateness');
    console.info(`Weighted lateness, h: ${worse} with the frame down, ${helped} with an extra shift the night before`);
    // A plan is not judged by lateness alone: where the frame is hardly missed, it may give some hours for fewer changeovers.
    expect(helped).toBeLessThanOrEqual(worse * (1 + GIVEN_AWAY));
    expect(await violationsInBothThemes(page)).toEqual([]);
    await hand.press('button', /^Publish/);
    await page.getByText('The trial plan is published.').waitFor();
    await page.getByRole('heading', { name: 'Frame lanes' }).waitFor();
    const after = await published();
    expect(after.version).toBeGreaterThan(before.version);
    const lane = after.lanes.find(({ frame }) => frame.id === missed.frame.id)!;
    expect(lane.down.some(({ why }) => why === 'The crosshead drive is repaired')).toBe(true);
    const during = lane.bookings.filter(
      ({ state, setupAt }) =>
        !['running', 'paused', 'rigged', 'taken'].includes(String(state)) && inside(setupAt, down),
    );
    expect(during).toEqual([]);
    expect(after.unplaced.length).toBeLessThanOrEqual(before.unplaced.length);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1280);
    await page.context().close();
  });

  async function published(): Promise<PlanView> {
    return until(async () => {
      const { status, body } = await api.get<PlanView>('/plan');
      return status === 200 && !body.stale && body;
    }, 90_000);
  }
});

/** The lane whose jobs would be latest if those of the two days had to wait for their end: there a frame that is down is an overload. */
function mostMissedLane({ lanes }: PlanView, down: { from: number; until: number }): PlanView['lanes'][number] {
  const wait = down.until - down.from;
  const lateness = ({ bookings }: PlanView['lanes'][number]) =>
    bookings
      .filter(({ startsAt, dueAt }) => dueAt !== null && inside(startsAt, down))
      .reduce((sum, { endsAt, dueAt }) => sum + Math.max(0, Date.parse(endsAt) + wait - Date.parse(dueAt!)), 0);
  const free = lanes.filter((lane) => lane.down.length === 0 && lane.frame.state === 'in-service');
  return free.sort((a, b) => lateness(b) - lateness(a))[0]!;
}

function inside(at: string, { from, until: end }: { from: number; until: number }): boolean {
  return Date.parse(at) >= from && Date.parse(at) < end;
}

/** A figure of the comparison as it stands. */
async function figure(page: Page, label: string): Promise<number> {
  const text = await page
    .locator(`${styled('compare')} > div`, { hasText: label })
    .locator(`${styled('fig')} strong`)
    .first()
    .innerText();
  return Number(text.replace(/\s/g, ''));
}

/** As a date and time field takes it, on the wall clock of the lab. */
function local(atMs: number): string {
  const parts = new Intl.DateTimeFormat('sv-SE', { timeZone: 'Europe/London', dateStyle: 'short', timeStyle: 'short' });
  return parts.format(atMs).replace(' ', 'T');
}

/** When the early shift of the demo lab next begins, on a weekday. */
function nextOpening(afterMs: number): number {
  let at = Math.ceil(afterMs / MS_PER_HOUR) * MS_PER_HOUR;
  while (!local(at).endsWith('06:00') || [0, 6].includes(new Date(at).getUTCDay())) at += MS_PER_HOUR;
  return at;
}

/** Counts what is really clicked on the page. */
async function countClicks(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const counted = globalThis as unknown as { clicks: number };
    counted.clicks = 0;
    addEventListener('click', () => counted.clicks++, { capture: true });
  });
  return () => page.evaluate(() => (globalThis as unknown as { clicks: number }).clicks);
}
