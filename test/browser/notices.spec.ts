import type { Browser, Page } from 'playwright-core';
import type { NoticesView } from '#libs/contract/src/index.js';
import { browserPath, signedIn, start, withoutBrowser } from '../support/browser.js';
import { startLab } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { violations } from './violations.js';

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));

const MANAGER = { name: 'Ruth Calloway', email: 'ruth.calloway@northmoor.example' };

describe('notices on the page', () => {
  let lab: Lab;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    if (withoutBrowser(path)) return;
    lab = await startLab({ filled: 'demo', worker: false });
    browser = await start(path!);
    page = await signedIn(browser, lab, MANAGER.name);
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    await lab?.stop();
  }, 60_000);

  inBrowser(
    'come by themselves, lead to what they tell of, and are read by that',
    async () => {
      await page.getByRole('link', { name: 'Notices', exact: true }).waitFor();
      const [request] = await lab.records.query<[{ id: string; reference: string }]>(
        `select id, reference from request where state in ('accepted', 'in-work') and team_id in (select team_id from team_member
           join person on person.id = person_id where email = 'sam.whitlock@northmoor.example') order by reference limit 1`,
      );
      const requester = await lab.signIn('sam.whitlock@northmoor.example', 'northmoor-demo');
      await requester.post(`/requests/${request.id}/messages`, { body: 'Is the left one first?' });
      await page.getByRole('link', { name: /Notices.*1 new/ }).click();
      await page.getByText('Is the left one first?').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('link', { name: `${request.reference} has a new message` }).click();
      await page.waitForURL(`**/requests/${request.id}`);
      await page.getByRole('link', { name: 'Notices', exact: true }).waitFor();
      const manager = await lab.signIn(MANAGER.email, 'northmoor-demo');
      expect((await manager.get<NoticesView>('/notices')).body).toMatchObject({ unread: 0 });
    },
    120_000,
  );

  inBrowser(
    'are mailed as one chooses, and a calendar key is shown once',
    async () => {
      await page.goto(`${lab.baseUrl}/notices`);
      await page.getByLabel('Mails').selectOption('daily');
      await page.getByText('Your choice is saved.').waitFor();
      await page.getByLabel('Where it is used').fill('Phone');
      await page.getByRole('button', { name: 'Make a key' }).click();
      const address = await page.getByText(/\/feeds\/people\/.*\.ics\?key=/).textContent();
      expect((await fetch(address!)).status).toBe(200);
      await page.reload();
      await page.getByText('used').first().waitFor();
      expect(await page.getByText(/ics\?key=/).count()).toBe(0);
      await page.getByLabel('Mails').waitFor();
      expect(await page.getByLabel('Mails').inputValue()).toBe('daily');
    },
    120_000,
  );
});
