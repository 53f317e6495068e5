import { jest } from '@jest/globals';
import type { Browser, Page, Route } from 'playwright-core';
import type { JobView, PlanView, RequestView } from '#libs/contract/src/index.js';
import { atTheDoor, browserPath, start, withoutBrowser } from '../support/browser.js';
import { startLab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { until } from '../support/until.js';
import { benchLab, readyRequest } from '../stories/bench-lab.js';
import type { BenchLab } from '../stories/bench-lab.js';
import { setUpLab } from '../stories/story-steps.js';
import { mouse, styled } from './hands.js';
import { checkAll, finish, scanAll, signIn } from './whole-story.js';

jest.setTimeout(240_000);

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));
const TABLET = { viewport: { width: 1024, height: 768 }, hasTouch: true };
const SPECIMENS = 10;

describe('a technician with a tablet and a barcode reader', () => {
  let bench: BenchLab;
  let browser: Browser;
  let request: RequestView;

  beforeAll(async () => {
    if (withoutBrowser(path)) return;
    bench = await benchLab(await startLab());
    await setUpLab(bench.manager);
    request = await readyRequest(bench, 'Ten bars of lot 7', [{ ...bench.batch, specimenCount: SPECIMENS }]);
    await until(
      async () => (await bench.manager.get<PlanView>('/plan')).body.lanes?.some(({ bookings }) => bookings.length > 0),
      60_000,
    );
    browser = await start(path!);
  });
  afterAll(async () => {
    await browser?.close();
    await bench?.lab.stop();
  });

  inBrowser(
    'runs a job of ten specimens to its end; the network is cut again and again, and nothing is lost or done twice',
    async () => {
      const page = await atTheDoor(browser, bench.lab, TABLET);
      const hand = mouse(page);
      await signIn(hand, 'technician');
      await page.getByRole('button', { name: 'Take this job' }).tap();
      await scanAll(page);
      await checkAll(hand);
      for (let at = 1; at <= SPECIMENS; at++) {
        await type(page, at);
        const save = page.getByRole('button', { name: `Save ${label(at)}`, exact: true });
        if (at === 4) await cutBefore(page, () => save.tap());
        else if (at === 7) await loseTheAnswer(page, () => save.tap());
        else if (at === 9) await loseTheAnswerForGood(page, () => save.tap());
        else await save.tap();
        await page
          .locator(`${styled('specimen-tabs')} button${styled('tested')}`)
          .nth(at - 1)
          .waitFor();
      }
      await finish(hand);
      await eachOnce();
    },
  );

  /** Everything is in the record once, with the figures that were typed. */
  async function eachOnce(): Promise<void> {
    const jobId = request.batches[0]!.job!.id;
    const { body: job } = await bench.technician.get<JobView>(`/jobs/${jobId}`);
    expect(job.state).toBe('done');
    expect(job.specimens.map(({ results }) => results.find(({ key }) => key === 'peak-load')?.value)).toEqual(
      Array.from({ length: SPECIMENS }, (_, index) => loadN(index + 1)),
    );
    expect(job.specimens.map(({ dimensions }) => dimensions['widthMm']?.length)).toEqual(Array(SPECIMENS).fill(3));
    expect(job.specimens.map(({ dimensions }) => dimensions['thicknessMm'])).toEqual(
      Array(SPECIMENS).fill([4, 4, 4.005]),
    );
    const events = await bench.lab.records.query<{ kind: string; count: number }[]>(
      `select kind, count(*)::int as count from record_event where subject_id = $1 and kind in ('job/taken', 'job/running', 'job/done', 'results/entered') group by kind order by kind`,
      [jobId],
    );
    expect(events).toEqual([
      { kind: 'job/done', count: 1 },
      { kind: 'job/running', count: 1 },
      { kind: 'job/taken', count: 1 },
      { kind: 'results/entered', count: SPECIMENS },
    ]);
  }
});

const label = (at: number) => String(at).padStart(2, '0');
const loadN = (at: number) => 2800 + 10 * at;

async function type(page: Page, at: number): Promise<void> {
  await page.locator(`${styled('specimen-tabs')} [aria-current=true]`, { hasText: label(at) }).waitFor();
  for (const reading of [1, 2, 3]) {
    await page.getByLabel(`Width, reading ${reading}`).fill('10');
    await page.getByLabel(`Thickness, reading ${reading}`).fill('4');
  }
  await page.getByLabel('Thickness, reading 3').fill('4.005'); // as a micrometer reads: 4, and not 4005
  await page.getByLabel(/^Peak load|^Maximum load|^Peak force/).fill(String(loadN(at)));
}

/** The tablet is out of reach when the act is sent, and what was typed stands until it is back. */
async function cutBefore(page: Page, act: () => Promise<void>): Promise<void> {
  await page.context().setOffline(true);
  await act();
  await page.getByText('saved on this device').waitFor();
  await page.context().setOffline(false);
}

const RESULTS = /\/results$/;

/** The act arrives, its answer does not: the same act is sent again, and must be done once. */
async function loseTheAnswer(page: Page, act: () => Promise<void>): Promise<void> {
  let lost = 0;
  const swallow = async (route: Route) => {
    const answer = await route.fetch();
    expect(answer.status()).toBeLessThan(300);
    await route.abort('connectionreset');
    lost++;
  };
  await page.route(RESULTS, swallow, { times: 1 });
  await act();
  await until(async () => lost === 1);
}

/** As above, and the server died before it could keep its answer: the second try is told that it was done. */
async function loseTheAnswerForGood(page: Page, act: () => Promise<void>): Promise<void> {
  const problem = { type: '/problems/idempotency-key/done-already', title: 'Done already', status: 409 };
  const doneAlready = { status: 409, contentType: 'application/problem+json', body: JSON.stringify(problem) };
  await page.route(RESULTS, (route) => route.fulfill(doneAlready), { times: 1 });
  await loseTheAnswer(page, act); // the newest route is asked first
}
