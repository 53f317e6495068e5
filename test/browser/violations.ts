import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Violations of WCAG 2.2 A and AA as axe-core finds them, with the first place of each. */
export async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).withTags(WCAG).analyze();
  return found.map(({ id, nodes }) => `${new URL(page.url()).pathname}: ${id} at ${String(nodes[0]?.target)}`);
}

/** The same in both themes, on the page as it stands; the second theme changes nothing but colours. */
export async function violationsInBothThemes(page: Page): Promise<string[]> {
  const before = await page.evaluate(() => document.documentElement.dataset['theme'] ?? 'light');
  await show(page, 'light');
  const found = (await violations(page)).map((violation) => `light: ${violation}`);
  await show(page, 'dark');
  const { violations: inDark } = await new AxeBuilder({ page }).withRules(['color-contrast']).analyze();
  found.push(
    ...inDark.map(({ id, nodes }) => `dark: ${new URL(page.url()).pathname}: ${id} at ${String(nodes[0]?.target)}`),
  );
  await show(page, before);
  return found;
}

/** Shows the page in a theme, as its own switch does. */
export function show(page: Page, theme: string): Promise<void> {
  return page.evaluate((name) => {
    document.documentElement.dataset['theme'] = name;
  }, theme);
}
