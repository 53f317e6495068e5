import { MATERIALS } from '#seed/library/materials.js';
import { METHODS } from '#seed/library/methods.js';
import { checkMaterial, checkMethod } from './check-method.js';

const plain = (value: unknown) => JSON.parse(JSON.stringify(value)) as Record<string, unknown>;
const [METHOD] = METHODS.map(plain);
const [MATERIAL] = MATERIALS.map(plain);
const fields = (problems: { field: string }[]) => problems.map(({ field }) => field);

describe('a method that somebody enters', () => {
  it.each(METHODS.map(({ id }, index) => [id, index] as const))('may be %s of the library', (_id, index) => {
    expect(checkMethod(plain(METHODS[index]))).toEqual([]);
  });

  it('must have every field, and no other', () => {
    expect(fields(checkMethod({ ...METHOD, note: 1 }))).toEqual(['data.note']);
    for (const key of Object.keys(METHOD!).filter((each) => !['version', 'changed'].includes(each))) {
      const { [key]: _gone, ...rest } = METHOD!;
      expect(fields(checkMethod(rest)).some((field) => field.startsWith(`data.${key}`))).toBe(true);
    }
  });

  it.each<[string, unknown, string]>([
    ['id', 'ISO 527!', 'data.id'],
    ['minSpecimens', 0, 'data.minSpecimens'],
    ['minSpecimens', 2.5, 'data.minSpecimens'],
    ['speeds', [], 'data.speeds'],
    [
      'speeds',
      [{ stage: 'whole', rule: { kind: 'fixed', mmPerMin: 0 }, tolerancePct: null, source: '' }],
      'data.speeds[0].rule.mmPerMin',
    ],
    ['ends', { by: 'glue' }, 'data.ends.by'],
    ['loadingSpanRatio', 1, 'data.loadingSpanRatio'],
    ['geometry', [{ key: 'widthMm', required: 'yes', min: 0, max: 1, help: '' }], 'data.geometry[0].required'],
    ['reportSteps', { modulus: { step: 0 } }, 'data.reportSteps.modulus.step'],
    ['modulusStrain', { from: 0.0025, to: 0.0005 }, 'data.modulusStrain.to'],
    ['shapes', 'round', 'data.shapes'],
    ['hazards', null, 'data.hazards'],
  ])('is refused for %s %p at %s', (key, value, field) => {
    expect(fields(checkMethod({ ...METHOD, [key]: value }))).toEqual([field]);
  });
});

describe('a material that somebody enters', () => {
  it('may be any of the library', () => {
    expect(MATERIALS.flatMap((each) => checkMaterial(plain(each)))).toEqual([]);
  });

  it('is refused by the path of what is wrong', () => {
    const strengths = [{ ...(MATERIAL!['strengths'] as object[])[0], low: -1 }];
    expect(fields(checkMaterial({ ...MATERIAL, strengths, brittle: 'a bit' }))).toEqual([
      'data.strengths[0].low',
      'data.brittle',
    ]);
  });
});
