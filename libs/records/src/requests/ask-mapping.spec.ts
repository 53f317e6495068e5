import { askOf } from './ask-mapping.js';

const METHOD = { code: 'iso-178', version: 3 };

describe('the ask of a batch', () => {
  it('names method and material by code and version, and counts the specimens of the batch', () => {
    const ask = askOf({ ask: { specimens: 99, methodId: 'other' }, specimenCount: 5 }, METHOD, { code: 'pa66' });
    expect(ask).toMatchObject({ methodId: 'iso-178', methodVersion: 3, materialId: 'pa66', specimens: 5 });
  });

  it('agrees to nothing that nobody agreed to', () => {
    const { options, hazards, confirmed } = askOf({ ask: {}, specimenCount: 1 }, METHOD, null);
    expect(options).toEqual({ contactExtensometer: false, crossheadStrain: false, lowerForceClass: false });
    expect([hazards, confirmed]).toEqual([[], []]);
  });

  it('takes what a form left empty as absent', () => {
    const asked = {
      geometry: { shape: 'round', diameterMm: 8, gaugeLengthMm: null },
      options: { crossheadStrain: true },
    };
    const { geometry, options, results } = askOf({ ask: { ...asked, results: null }, specimenCount: 1 }, METHOD, null);
    expect(geometry).toEqual({ shape: 'round', diameterMm: 8 });
    expect([options.crossheadStrain, options.contactExtensometer, results]).toEqual([true, false, []]);
  });
});
