import { RAMPED } from './known-methods.js';
import { spreadOfResults } from './monte-carlo.js';
import { reduceAsLab } from './reduce-as-lab.js';
import { fileOf } from './recording.js';
import { statedUncertainty } from './stated-uncertainty.js';

const TRIALS = 400;
const ROWS = 1200;
/** How far U may lie from twice the spread of the trials (JCGM 101:2008, clause 8 compares the same two), … */
const WITHIN = 0.05;
/** … and where U is above this share of the figure, so that the first order of the GUM no longer holds. */
const LARGE = 0.15;
const WITHIN_LARGE = 0.15;

describe('the stated U is that of a propagation of distributions, within 5 %', () => {
  const cases = RAMPED.flatMap((known) => known.laws.map((law) => [known.method.id, law.name, known, law] as const));

  it.each(cases)('%s, %s', (_id, _name, known, law) => {
    const recording = known.record(law, ROWS);
    const seen = reduceAsLab(fileOf(recording), known);
    if (seen.state === 'refused') throw new Error(seen.why);
    const spread = spreadOfResults(known, recording, TRIALS);
    const compared = seen.results.flatMap(({ key, value, basis }) => {
      const stated = statedUncertainty(key, value, basis, known);
      const twice = 2 * spread.get(key)!;
      if (stated === null) return [];
      const relative = stated / Math.abs(value);
      const within = relative > LARGE ? WITHIN_LARGE : WITHIN;
      return [{ key, relative, within, off: Math.round(1000 * (relative / twice - 1)) / 1000 }];
    });
    expect(compared.filter(({ off, within }) => Math.abs(off) > within)).toEqual([]);
  });
});
