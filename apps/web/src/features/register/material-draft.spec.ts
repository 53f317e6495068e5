import { codeOf, fieldOf, materialBody, materialProblems, newBand } from './material-draft.js';
import type { MaterialDraft } from './material-draft.js';

const DRAFT: MaterialDraft = {
  name: 'Oak, along the grain',
  code: 'oak',
  group: 'wood',
  bands: [{ ...newBand('tensile'), low: '60', typical: '90', high: '130' }],
  modulusLowGPa: '10.5',
  modulusHighGPa: '14',
  elongationLowPct: '',
  elongationHighPct: '',
  brittle: true,
  source: 'A made-up example',
  confidence: 'from memory',
};

describe('a material as it is typed', () => {
  it('goes to the register in MPa and as a fraction, each strength with the source', () => {
    const typed = { ...DRAFT, elongationLowPct: '0.7', elongationHighPct: '1.2' };
    expect(materialProblems(typed)).toEqual({});
    expect(materialBody(typed)).toMatchObject({
      id: 'oak',
      modulusMPa: { low: 10_500, high: 14_000 },
      breakStrain: { low: 0.007, high: 0.012 },
      strengths: [{ property: 'tensile', low: 60, typical: 90, high: 130, unit: 'MPa', source: 'A made-up example' }],
    });
  });

  it('leaves out what nobody knows', () => {
    expect(materialBody(DRAFT)['breakStrain']).toBeNull();
  });

  it('names each band the wrong way round, and lets both ends be the same', () => {
    const bands = [{ ...newBand('tensile'), low: '130', typical: '130', high: '129.9' }];
    expect(Object.keys(materialProblems({ ...DRAFT, bands, modulusHighGPa: '10.5' }))).toEqual(['bands.0.high']);
    expect(Object.keys(materialProblems({ ...DRAFT, modulusHighGPa: '10.4' }))).toEqual(['modulusHighGPa']);
  });

  it('knows its fields by the paths of the register', () => {
    expect(
      ['data.id', 'data.name', 'data.strengths[1].low', 'data.modulusMPa.low', 'data.breakStrain.high'].map(fieldOf),
    ).toEqual(['code', 'name', 'bands[1].low', 'modulusLowGPa', 'elongationHighPct']);
  });

  it('makes a code of a name', () => {
    expect(codeOf('Oak, along the grain')).toBe('oak-along-the-grain');
    expect(codeOf('PA 6 – 30 % GF (dry)')).toBe('pa-6-30-gf-dry');
  });
});
