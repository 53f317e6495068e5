import { readFileSync } from 'node:fs';
import { methodsPage } from './methods-page.js';

it('the page of the methods tells what the product finds, and no wrong figure is without a remark', () => {
  const page = methodsPage();
  expect(page).not.toContain('| SILENT');
  // A difference here is a figure that moved: look at it, then `npm run check:methods -- --write`.
  expect(readFileSync(new URL('./methods.md', import.meta.url), 'utf8')).toBe(page);
});
