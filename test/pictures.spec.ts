import { readFileSync, statSync } from 'node:fs';
import { PICTURES } from './pictures/pictures.js';
import { MOST_BYTES } from './pictures/take-picture.js';

const readme = readFileSync('README.md', 'utf8');
const FILES = PICTURES.flatMap(({ name }) => ['light', 'dark'].map((theme) => `test/pictures/${name}-${theme}.webp`));

describe('the pictures of README', () => {
  it('are those that `npm run pictures` takes, light and dark', () => {
    const shown = [...readme.matchAll(/(?:src|srcset)="([^"]+)"/g)].map(([, file]) => file);
    expect(shown.sort()).toEqual([...FILES].sort());
  });

  it.each(FILES)('%s is there, and light enough', (file) => {
    const { size } = statSync(file);
    expect(size).toBeGreaterThan(0);
    expect(size).toBeLessThanOrEqual(MOST_BYTES);
  });
});
