import { chances } from './chances.js';
import { judge } from './judge.js';
import { RAMPED } from './known-methods.js';
import { TROUBLES } from './troubles.js';

describe.each(TROUBLES.map(({ name }, at) => [name, at] as const))('a record with trouble: %s', (_name, at) => {
  it.each(RAMPED.map((known) => [known.method.id, known] as const))('%s gives no wrong figure in silence', (_id, known) => {
    const chance = chances(at + 1);
    const silent = known.laws.flatMap((law) => {
      const spoiled = TROUBLES[at]!.spoil(known.record(law, 900), chance);
      return spoiled === null ? [] : judge(known, law, spoiled).filter(({ fate }) => fate === 'silent').map((each) => ({ law: law.name, ...each }));
    });
    expect(silent).toEqual([]);
  });
});
