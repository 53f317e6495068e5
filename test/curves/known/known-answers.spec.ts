import { METHODS } from '#seed/library/methods.js';
import { RAMPED } from './known-methods.js';
import { truthOf } from './judge.js';
import { TRACED } from './known-traces.js';
import { reduceAsLab } from './reduce-as-lab.js';
import { fileOf } from './recording.js';

const ALL = [...RAMPED, ...TRACED];

it('every method of the library has a specimen whose answers are known', () => {
  expect(ALL.map(({ method }) => method.id).sort()).toEqual(METHODS.map(({ id }) => id).sort());
});

/** Remarks that a sound record may carry, since they are true of the method: it stops before the load has fallen. */
const TRUE_OF_THE_METHOD = [
  /still rising when the curve ended/, // compression without a break
  /where the method stops looking/,
  /comes from crosshead travel/, // wood is bent without a deflectometer
  /straight part bends/, // annealed stainless steel has none
];

describe('a clean record of', () => {
  const cases = ALL.flatMap((known) => known.laws.map((law) => [known.method.id, law.name, known, law] as const));

  it.each(cases)('%s, %s, is reduced to what is known, without a remark', (_id, _name, known, law) => {
    const seen = reduceAsLab(fileOf(known.record(law, known.rows)), known);
    if (seen.state === 'refused') throw new Error(seen.why);
    const found = seen.results.flatMap(({ key, value, basis }) => {
      const truth = truthOf(known, law, key);
      const remarks = (basis['flags'] as string[]).filter((flag) => !TRUE_OF_THE_METHOD.some((known) => known.test(flag)));
      return truth === null ? [] : [{ key, ratio: value / truth, remarks: key === 'peak-load' ? [] : remarks }];
    });
    expect(found).toEqual(found.map(({ key }) => ({ key, ratio: expect.closeTo(1, 2), remarks: [] })));
    const wanted = known.method.results.filter((key) => truthOf(known, law, key) !== null);
    expect(found.map(({ key }) => key.split('@')[0])).toEqual(expect.arrayContaining(wanted));
  });
});

