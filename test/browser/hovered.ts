import type { Locator, Page } from 'playwright-core';

/** Least contrast of text, WCAG 2.2, success criterion 1.4.3. */
const LEAST = 4.5;

/** Buttons and links of a page, one of each kind, whose words lose their contrast while the pointer is over them. */
export async function faintWhenHovered(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const each of await oneOfEachKind(page)) {
    await each.hover({ force: true }); // what lies over it does not matter
    const contrast = await contrastOf(each);
    if (contrast < LEAST)
      found.push(`${new URL(page.url()).pathname}: ${await each.innerText()}: ${contrast.toFixed(1)}`);
  }
  return found;
}

/** The first of the buttons and links that share their classes and what is around them; the way past the navigation is out of sight. */
async function oneOfEachKind(page: Page): Promise<Locator[]> {
  const all = page.locator('button:enabled:visible, a:visible:not([href="#sheet"])');
  const kinds = await all.evaluateAll((elements) =>
    elements.map((element) => `${element.className} in ${element.parentElement?.className ?? ''}`),
  );
  return kinds.flatMap((kind, at) => (kinds.indexOf(kind) === at ? [all.nth(at)] : []));
}

/** Contrast of the text with the colour behind it, by the formula of WCAG 2.2 (relative luminance, contrast ratio). */
function contrastOf(element: Locator): Promise<number> {
  return element.evaluate((shown) => {
    const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const luminance = (colour: string) => {
      const [red = 0, green = 0, blue = 0] = channels(colour)
        .slice(0, 3)
        .map((channel) => channel / 255)
        .map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const isClear = (colour: string) => channels(colour)[3] === 0;
    let behind: Element | null = shown;
    while (behind && isClear(getComputedStyle(behind).backgroundColor)) behind = behind.parentElement;
    const [a, b] = [
      luminance(getComputedStyle(shown).color),
      luminance(getComputedStyle(behind ?? shown).backgroundColor),
    ];
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  });
}
