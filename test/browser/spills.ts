import type { Page } from 'playwright-core';

/** Boxes on a page whose content runs out of them, over their neighbours or the edge of the page; what scrolls or is clipped does not count. */
export async function spills(page: Page): Promise<string[]> {
  const found = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('body *')]
      .filter((box) => {
        const { display, overflowX, clipPath } = getComputedStyle(box);
        if (display === 'inline' || overflowX !== 'visible' || clipPath !== 'none') return false;
        // A drawing has no boxes, a booking shows of its words what its time has room for, and the end of an axis is written astride.
        if (box.closest('svg, [class*="_booking_"], [class*="_rung_"][class*="_axis_"]')) return false;
        return box.clientWidth > 0 && box.scrollWidth > box.clientWidth + 1;
      })
      .map(({ tagName, className, textContent }) => `${tagName}.${className}: ${(textContent ?? '').slice(0, 40)}`),
  );
  return found.map((box) => `${new URL(page.url()).pathname}: ${box}`);
}
