import {
  labWith,
  needsFor,
  SAMPLE_LAB,
  SAMPLE_LINKS,
  sampleItem,
  verdictOn,
} from '#test/support/matching/sample-lab.js';

const without = SAMPLE_LINKS.filter(({ role }) => role !== 'extensometer');
const options = { contactExtensometer: true, crossheadStrain: false, lowerForceClass: false };
const told = (change: Record<string, unknown>, lab = labWith('X', {}, change), needs = needsFor()) => {
  const { outcome, reason } = verdictOn('strain', { lab, needs });
  return outcome === 'pass' ? outcome : `${outcome} ${reason}`;
};
const holding = (change: Record<string, unknown>) => {
  const calibrations = sampleItem('extensometer', 'X').calibrations.map((each) => ({ ...each, ...change }));
  return told({}, labWith('X', { calibrations }));
};

// The modulus of ISO 527 demands class 1 at 75 mm; to 2 % strain that are 1.5 mm.
describe('strain', () => {
  it.each([
    [{}, 'pass'],
    [{ gaugeLengthsMm: [50] }, 'fail no-such-gauge'],
    [{ gaugeLengthsMm: [75.7] }, 'pass'],
    [{ gaugeLengthsMm: [75.8] }, 'fail no-such-gauge'],
    [{ travelPlusMm: 1.5 }, 'pass'],
    [{ travelPlusMm: 1.4 }, 'fail extension-too-long'],
    [{ specimenMinMm: 4 }, 'pass'],
    [{ specimenMinMm: 4.1 }, 'fail specimen-too-thin'],
    [{ specimenMaxMm: 3.9 }, 'fail specimen-too-thick'],
    [{ measures: 'deflection' }, 'fail measures-other'],
  ])('an extensometer with %j: %s', (details, expected) => expect(told(details)).toBe(expected));

  it.each([
    [{ className: '0.5' }, 'pass'],
    [{ className: '2' }, 'fail extensometer-class'],
    [{ to: 1.5 }, 'pass'],
    [{ to: 1.4 }, 'fail extension-not-verified'],
  ])('a calibration with %j: %s', (change, expected) => expect(holding(change)).toBe(expected));

  it('keeps a touching one away from specimens that allow none', () => {
    const needs = needsFor({ options: { ...options, contactExtensometer: false } });
    expect(told({}, SAMPLE_LAB, needs)).toBe('fail may-not-touch');
    expect(told({ contact: false }, labWith('X', {}, { contact: false }), needs)).toBe('pass');
  });

  it('fails without one where the method demands it, cautions where it only prefers it', () => {
    expect(verdictOn('strain', { links: without }).outcome).toBe('fail');
    const preferred = needsFor({ results: ['strain-at-break'] });
    expect(verdictOn('strain', { links: without, needs: preferred }).outcome).toBe('caution');
    const crosshead = needsFor({ results: ['strain-at-break'], options: { ...options, crossheadStrain: true } });
    expect(verdictOn('strain', { links: without, needs: crosshead }).reason).toBe('crosshead-strain');
    expect(verdictOn('strain', { links: without, needs: needsFor({ results: ['peak-stress'] }) }).outcome).toBe('pass');
  });
});
