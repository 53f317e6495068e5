import { populationBound } from './population-bound.js';
import { possibleOutliers } from './possible-outliers.js';

const labelled = (values: readonly number[]) => values.map((value, at) => ({ label: `S${at + 1}`, value }));

describe('possible outliers', () => {
  it('are not looked for among three values', () => {
    expect(possibleOutliers(labelled([500, 500, 501]), 1)).toEqual([]);
    expect(possibleOutliers(labelled([500, 501, 900]), 1)).toEqual([]);
  });

  it('are named from four values on, unless the step of the report explains them', () => {
    expect(possibleOutliers(labelled([500, 501, 502, 560]), 1)).toEqual(['S4']);
    expect(possibleOutliers(labelled([500, 500, 500, 501]), 1)).toEqual([]);
    expect(possibleOutliers(labelled([500, 500, 500, 501]), null)).toEqual(['S4']);
  });
});

describe('the bound of a population', () => {
  // Quantiles of a normal population: as normal as a sample can be.
  const normal = (n: number) =>
    Array.from(
      { length: n },
      (_, at) => 500 + 10 * Math.sin(((at + 0.5) / n - 0.5) * 2) * (1 + 0.4 * ((at + 0.5) / n - 0.5) ** 2),
    );

  it('is stated from 18 specimens on, with its conditions', () => {
    expect(populationBound([100, 120, 140], 'MPa')).toBeNull();
    expect(populationBound(normal(17), 'MPa')).toBeNull();
    expect(populationBound(normal(18), 'MPa')!.sentence).toMatch(/18 specimens of one batch.*Anderson–Darling/);
  });

  it('is silent where the values are not normal', () => {
    const twoHeaps = [
      ...Array.from({ length: 10 }, (_, at) => 100 + at / 10),
      ...Array.from({ length: 10 }, (_, at) => 200 + at / 10),
    ];
    expect(populationBound(twoHeaps, 'MPa')).toBeNull();
  });
});
