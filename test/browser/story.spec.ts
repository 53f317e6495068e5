import { jest } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { atTheDoor, browserPath, start, withoutBrowser } from '../support/browser.js';
import { startLab } from '../support/lab.js';
import { maybe } from '../support/maybe.js';
import { benchLab } from '../stories/bench-lab.js';
import type { BenchLab } from '../stories/bench-lab.js';
import { setUpLab } from '../stories/story-steps.js';
import { keyboard, mouse } from './hands.js';
import type { Hand } from './hands.js';
import { violationsInBothThemes } from './violations.js';
import { wholeStory } from './whole-story.js';

jest.setTimeout(240_000);

const path = await browserPath();
const inBrowser = maybe(withoutBrowser(path));

describe('a request goes from the form to its report in a browser', () => {
  let bench: BenchLab;
  let browser: Browser;

  beforeAll(async () => {
    if (withoutBrowser(path)) return;
    bench = await benchLab(await startLab());
    await setUpLab(bench.manager);
    browser = await start(path!);
  });
  afterAll(async () => {
    await browser?.close();
    await bench?.lab.stop();
  });

  async function cast(by: (page: Page) => Hand) {
    const [requester, manager] = [await atTheDoor(browser, bench.lab), await atTheDoor(browser, bench.lab)];
    const technician = await atTheDoor(browser, bench.lab);
    return { requester: by(requester), manager: by(manager), technician: by(technician) };
  }

  inBrowser('by mouse, and no sheet on the way violates WCAG 2.2 A or AA in light or dark', async () => {
    const people = await cast(mouse);
    const found: string[] = [];
    const told = await wholeStory(people, 'Rear carrier bracket', async (page) => {
      found.push(...(await violationsInBothThemes(page)));
    });
    expect(told.number).toMatch(/^TR-\d{4}-\d{4}$/);
    expect([...new Set(found)]).toEqual([]);
  });

  inBrowser('by nothing but the keyboard, for each of the three people', async () => {
    const people = await cast(keyboard);
    const told = await wholeStory(people, 'Front carrier bracket', async () => {});
    expect(told.number).toMatch(/^TR-\d{4}-\d{4}$/);
  });
});
