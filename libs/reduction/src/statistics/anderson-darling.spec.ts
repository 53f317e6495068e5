import { testNormality } from './anderson-darling.js';
import { normalQuantile } from './normal.js';

/** Even chances from a seed (Mulberry32, public domain). */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const share = (count: number, hit: () => boolean): number =>
  Array.from({ length: count }, hit).filter(Boolean).length / count;

describe('testNormality', () => {
  // By definition a test at 5 % refuses 5 % of normal samples; four standard deviations of 4000 draws are 1.4 points.
  it.each([20, 50])('refuses about 5 %% of normal samples of %p', (n) => {
    const chance = chances(n);
    const sample = () => Array.from({ length: n }, () => 500 + 20 * normalQuantile(chance() || 0.5));
    expect(Math.abs(share(4000, () => testNormality(sample())!.significance < 0.05) - 0.05)).toBeLessThan(0.014);
  });

  it('refuses most samples of a skewed population', () => {
    const chance = chances(3);
    const sample = () => Array.from({ length: 30 }, () => -Math.log(1 - chance()));
    expect(share(300, () => testNormality(sample())!.significance < 0.05)).toBeGreaterThan(0.9);
  });

  it('is silent on few values and on equal ones', () => {
    expect(testNormality([1, 2, 3, 4, 5, 6, 7])).toBeNull();
    expect(testNormality(Array.from({ length: 20 }, () => 5))).toBeNull();
  });
});
