import { figureProblem, readFigure } from '#libs/bench/src/index.js';
import { resultWords } from '#libs/contract/src/index.js';
import { METHODS } from '#seed/library/methods.js';

/** A cell for 50 kN on 20 mm²; torsion methods get the same cell in N·m. */
const CARRIER = { cell: { tag: 'LC-50K', capacity: 50_000 }, loadPerStress: 20, isMeasured: true, travelMm: 1100 };

const RESULTS = METHODS.flatMap(({ id, testType, results, usualResults }) =>
  [...new Set([...results, ...usualResults])].map((key) => [`${id} ${key}`, key, testType] as const),
);

describe('a result of any method of the library', () => {
  it.each(RESULTS)('%s has a name of its own', (_, key, testType) => {
    expect(resultWords(key, testType).label).not.toBe(key);
  });

  it.each(RESULTS)('%s is refused when it is absurd, with its unit', (_, key, testType) => {
    const words = resultWords(key, testType);
    const loadUnit = testType === 'torsion' ? 'N·m' : 'N';
    for (const value of [1e9, -1e9]) {
      const figure = readFigure({ key, value, unit: words.unit }, words, 'results[0]');
      if ('sentence' in figure) throw new Error(figure.sentence);
      expect(figureProblem(figure, 'results[0].value', { ...CARRIER, loadUnit })).toMatchObject({
        field: 'results[0].value',
        unit: words.unit,
        allowed: expect.stringMatching(/^a number, (at least|more than) .* and at most /),
      });
    }
  });
});
