import { chances } from '#test/curves/known/chances.js';
import { reduceForSpec } from '#test/support/reduce-for-spec.js';

/** Load N on rows with 0.01 mm of travel each: a parabola with its top of 1000 N at row 100, worked over. */
const TOP = 1000;
const parabola = (end: number, over = (value: number) => value) =>
  Array.from({ length: end + 1 }, (_, row) => over(TOP * (1 - ((row - 100) / 100) ** 2)));
const flagsOf = (forceN: readonly number[], recipe: Parameters<typeof reduceForSpec>[2] = {}) => {
  const displacementMm = forceN.map((_, row) => row / 100);
  const { flagsOf } = reduceForSpec({ displacementMm, forceN }, ['peak-load', 'travel-at-peak', 'energy-to-peak'], {
    kind: 'component',
    break: { way: 'load-drop', share: 0.4 },
    ...recipe,
  });
  return { load: flagsOf('peak-load'), travel: flagsOf('travel-at-peak'), energy: flagsOf('energy-to-peak') };
};

describe('what a reader of the highest load should know', () => {
  it('is nothing where the load rose, peaked and fell to the break', () => {
    expect(flagsOf(parabola(180))).toEqual({ load: [], travel: [], energy: [] });
  });

  // 1000·(1 − 0.77²) = 407.1 N at row 177, 1000·(1 − 0.78²) = 391.6 N at row 178; the break is at 400 N.
  it('is that a higher peak may have followed, where the record ends before the load fell to the break', () => {
    const flagged = ['peak-not-passed'];
    expect(flagsOf(parabola(177))).toEqual({ load: flagged, travel: flagged, energy: flagged });
    expect(flagsOf(parabola(178)).load).toEqual([]);
    expect(flagsOf(parabola(177), { break: { way: 'end-of-curve' } }).load).toEqual([]);
    expect(flagsOf(parabola(177), { peakUpToStrain: 1.5 }).load).toEqual([]);
  });

  // Readings that scatter by 1 N are alike from 1000 N down to about 996 N: 0.06 mm to either side of the top, 13 % of its travel.
  it('is that the place of the peak is uncertain where the load scatters on a flat top', () => {
    const chance = chances(1);
    const flagged = ['peak-broad'];
    expect(flagsOf(parabola(180, (value) => value + (chance() - 0.5) * Math.sqrt(12)))).toEqual({
      load: [],
      travel: flagged,
      energy: flagged,
    });
  });
});
