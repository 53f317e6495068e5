import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Method } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { reduceAsLab } from '#test/curves/known/reduce-as-lab.js';
import { checkData } from '#test/support/check-data.js';
import { readTable } from './read-table.js';

// Concrete cylinders of the Bundesanstalt für Materialforschung und -prüfung, MIT licence: test/published/README.md. Each file goes
// the way of a lab: proposed format, reader, a recipe of the library, results as they are kept.

const method = (id: string): Method => METHODS.find((each) => each.id === id)!;
const kept = (name: string) => readFileSync(new URL(`./concrete/${name}.csv`, import.meta.url));

/** Travels of strength tests are those of the machine, so that the length of the cylinder stands for a height only. */
function reduced(file: Uint8Array, id: string, diameterMm: number, heightMm: number) {
  const geometry = { shape: 'round', diameterMm, heightMm, gaugeLengthMm: 100 } as const;
  const seen = reduceAsLab(file, { method: method(id), geometry });
  if (seen.state === 'refused') throw new Error(seen.why);
  return seen.results;
}

describe.each(['astm-c39', 'en-12390-3'])('strengths of concrete cylinders by %s', (id) => {
  it.each(readTable('concrete/results.csv'))('are within 0.2 %% of what was published: $specimen', (published) => {
    const stated = (column: string) => Number(published[column]);
    // The publisher divided by the area of the rounded diameter, with 3.14 for π.
    const diameterMm = Math.sqrt((4 * stated('published_area_mm2')) / Math.PI);
    const results = reduced(kept(published['specimen']!), id, diameterMm, stated('height_mm'));
    const strength = results.find(({ key }) => key === 'peak-stress')!;
    expect(Math.abs(strength.value / stated('strength_MPa') - 1)).toBeLessThan(0.002);
    expect(strength.basis['flags']).toEqual([]);
  });
});

describe('a record with three load cycles between a tenth and a third of the strength', () => {
  const CYCLES = /^The record holds 3 loadings, and the method reads it as one ramp/;
  const folder = checkData('checks', 'curves-open', 'concrete-modulus');
  const others = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.csv.gz')) : [];
  const records = [
    ['M11-Z5, kept here', kept('M11-Z5-load-cycles')] as const,
    ...others.map((name) => [name, gunzipSync(readFileSync(join(folder, name)))] as const),
  ];
  const cases = records.flatMap(([name, file]) =>
    ['astm-c39', 'astm-e9', 'iso-604'].map((id) => [name, id, file] as const),
  );

  it.each(cases)('is flagged in words on each figure that reads it as one ramp: %s by %s', (_name, id, file) => {
    const results = reduced(file, id, 99, 300);
    expect(
      results.map(({ key, basis }) => [key, (basis['flags'] as string[]).some((flag) => CYCLES.test(flag))]),
    ).toEqual(results.map(({ key }) => [key, true]));
    expect(results.map(({ key }) => key)).toContain('peak-load');
  });
});
