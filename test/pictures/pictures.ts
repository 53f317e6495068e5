import type { Locator, Page } from 'playwright-core';
import type { Hand } from '../browser/hands.js';

/** One picture of README: who looks at what, and the way there. */
export interface Picture {
  /** Its file is `<name>-<theme>.webp`. */
  name: string;
  /** As the demo lab offers the person on the sign-in page; null stays in front of it. */
  person: string | null;
  /** Height of the window, px: where the picture ends. */
  height: number;
  /** What of the window the picture shows; all of it when left out. */
  only?(page: Page): Locator;
  go(hand: Hand): Promise<void>;
}

export const PICTURES: readonly Picture[] = [
  {
    name: 'door',
    person: null,
    height: 1000,
    go: async ({ page }) => {
      await page.getByRole('button', { name: 'Tom Ashdown' }).waitFor();
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    },
  },
  {
    name: 'request',
    person: 'Daniel Orme',
    height: 1046,
    go: async (hand) => {
      const { page } = hand;
      await hand.press('link', /Recall check: fork steerer/);
      await hand.press('button', 'Copy');
      await hand.fill('Specimens', '4');
      await page.getByText(/^Fits: /).waitFor();
      await page.locator('summary', { hasText: 'FR-100K' }).first().click();
      await toTop(page.getByRole('tab', { name: 'Batch 1' }));
    },
  },
  {
    name: 'lanes',
    person: 'Ruth Calloway',
    height: 800,
    go: async (hand) => {
      await hand.press('link', 'Planning');
      await hand.press('link', 'Frame lanes');
      await hand.page.getByText('FR-T200').first().waitFor();
    },
  },
  {
    name: 'bench',
    person: 'Priya Raman',
    height: 800,
    go: async (hand) => {
      await hand.press('link', 'Bench');
      await hand.press('link', /Tent roof fabric after weathering/);
      await hand.page.getByText(/^Limit stops/).waitFor();
    },
  },
  {
    name: 'report',
    person: 'Sam Whitlock',
    height: 1180,
    only: (page) => page.getByRole('article'),
    go: async (hand) => {
      const { page } = hand;
      await hand.press('link', 'Reports');
      await hand.press('link', /^TR-2026-0077/);
      await page.getByText('Force, N').waitFor();
      await toTop(page.getByRole('heading', { name: 'Summary' }));
    },
  },
];

/** Scrolls until the place is near the upper edge. */
function toTop(place: Locator): Promise<void> {
  return place.evaluate((element) => window.scrollBy(0, element.getBoundingClientRect().top - 24));
}
