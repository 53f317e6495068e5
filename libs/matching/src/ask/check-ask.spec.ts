import { askFields } from './ask-fields.js';
import type { Ask } from './ask.js';
import { checkAsk } from './check-ask.js';
import { methodNamed, SAMPLE_ASK } from '#test/support/matching/sample-lab.js';

const method = methodNamed('iso-527-2');
const wrong = (change: Partial<Ask>) =>
  checkAsk(method, { ...SAMPLE_ASK, ...change }).map(({ field, sentence }) => `${field}: ${sentence}`);
const geometry = (change: Partial<Ask['geometry']>) => wrong({ geometry: { ...SAMPLE_ASK.geometry, ...change } });

describe('checkAsk', () => {
  it('accepts the sample', () => expect(wrong({})).toEqual([]));

  it.each([
    [geometry({ widthMm: undefined }), 'geometry.widthMm'],
    [geometry({ thicknessMm: -4 }), 'geometry.thicknessMm'],
    [geometry({ parallelLengthMm: 120 }), 'geometry.parallelLengthMm'],
    [geometry({ shape: 'tube' }), 'geometry.shape'],
    [wrong({ peak: { low: 2000, high: 1000 } }), 'peak.low'],
    [wrong({ peak: null }), 'materialId'],
    [wrong({ results: ['taste'] }), 'results'],
    [wrong({ results: [] }), 'results'],
    [wrong({ specimens: 2.5 }), 'specimens'],
    [wrong({ temperatureC: 5000 }), 'temperatureC'],
    [wrong({ speedMmPerMin: 5000 }), 'speedMmPerMin'],
  ])('%j names %s', (problems, field) => {
    expect(problems).toHaveLength(1);
    expect(problems[0]!.startsWith(`${field}: `)).toBe(true);
  });

  it('says found, allowed and unit', () => {
    expect(geometry({ thicknessMm: 400 })).toEqual([
      'geometry.thicknessMm: geometry.thicknessMm is 400 mm; allowed is a number, at least 0.2 and at most 20 mm.',
    ]);
  });

  it('asks only what the method needs', () => {
    const asked = (id: string) => askFields(methodNamed(id)).map(({ field }) => field);
    expect(asked('iso-178')).toContain('geometry.spanMm');
    expect(asked('iso-178')).not.toContain('geometry.gripSeparationMm');
    expect(asked('component-pull')).toEqual(expect.arrayContaining(['peak', 'travelMm']));
    expect(asked('component-pull')).not.toContain('materialId');
    expect(asked('astm-e143')).not.toContain('travelMm');
  });
});
