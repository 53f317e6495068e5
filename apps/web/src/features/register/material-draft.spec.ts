import { codeOf, materialBody, newBand } from './material-draft.js';
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
    const { data, problems } = materialBody({ ...DRAFT, elongationLowPct: '0.7', elongationHighPct: '1.2' });
    expect(problems).toEqual({});
    expect(data).toMatchObject({
      id: 'oak',
      modulusMPa: { low: 10_500, high: 14_000 },
      breakStrain: { low: 0.007, high: 0.012 },
      strengths: [{ property: 'tensile', low: 60, typical: 90, high: 130, unit: 'MPa', source: 'A made-up example' }],
    });
  });

  it('leaves out what nobody knows', () => {
    expect(materialBody(DRAFT).data['breakStrain']).toBeNull();
  });

  it('names each figure that cannot be read, and a band the wrong way round', () => {
    const bands = [{ ...newBand('tensile'), low: 'about 60', typical: '90', high: '130' }];
    const { problems } = materialBody({ ...DRAFT, bands, modulusHighGPa: '9' });
    expect(Object.keys(problems)).toEqual(['data.strengths[0].low', 'data.modulusMPa.high']);
  });

  it('asks for the source and for how sure it is', () => {
    const { problems } = materialBody({ ...DRAFT, source: ' ', confidence: '' });
    expect(Object.keys(problems)).toEqual(['data.source', 'data.confidence']);
  });

  it('makes a code of a name', () => {
    expect(codeOf('Oak, along the grain')).toBe('oak-along-the-grain');
    expect(codeOf('PA 6 – 30 % GF (dry)')).toBe('pa-6-30-gf-dry');
  });
});
