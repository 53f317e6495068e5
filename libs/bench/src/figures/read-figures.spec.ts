import { readFigures, unexplainedProblem } from './read-figures.js';

const WANTED = new Map([
  ['peak-load', { unit: 'N', factor: 1 }],
  ['strain-at-break', { unit: '%', factor: 100 }],
]);
const CARRIER = {
  ...{ cell: { tag: 'LC-5K', capacity: 5000 }, loadUnit: 'N' as const, loadPerStress: 40 },
  ...{ isMeasured: true, travelMm: 1200 },
};
const read = (...results: { key: string; value: number; unit: string }[]) => readFigures(results, WANTED, CARRIER);

describe('figures of a specimen', () => {
  it('are all kept when nothing is wrong', () => {
    const { figures, problems } = read(
      { key: 'peak-load', value: 5, unit: 'kN' },
      { key: 'strain-at-break', value: 3, unit: '%' },
    );
    expect([figures.map(({ value }) => value), problems]).toEqual([[5000, 0.03], []]);
  });

  it('are refused by the place of every key, unit and value that is wrong', () => {
    const { problems } = read(
      { key: 'colour', value: 1, unit: 'N' },
      { key: 'peak-load', value: 1, unit: 'bananas' },
      { key: 'peak-load', value: 5.1, unit: 'kN' },
    );
    expect(problems.map(({ field }) => field)).toEqual(['results[0].key', 'results[1].unit', 'results[2].value']);
    expect(problems[0]?.allowed).toBe('one of peak-load, strain-at-break');
  });
});

describe('a figure that was there before', () => {
  const there = [{ key: 'peak-load', value: 2800 }];

  it('may be sent again', () => {
    expect(unexplainedProblem([{ key: 'peak-load', value: 2800 }], there, undefined)).toBeNull();
  });

  it('is corrected with a reason only', () => {
    const corrected = [{ key: 'peak-load', value: 2810 }];
    expect(unexplainedProblem(corrected, there, undefined)?.field).toBe('why');
    expect(unexplainedProblem(corrected, there, '  ')?.field).toBe('why');
    expect(unexplainedProblem(corrected, there, 'Misread')).toBeNull();
  });
});
