import { matchTrains } from '#libs/matching/src/index.js';
import type { Ask, Calibration, Lab, Needs } from '#libs/matching/src/index.js';
import { labWith, needsFor, PERIOD, SAMPLE_LAB, sampleItem } from '#test/support/matching/sample-lab.js';

/*
 * From a method of the library to the load train that matching offers: what the method's own recipe reads decides what cell and
 * extensometer must be good for.
 */

const RUBBER: Partial<Ask> = {
  methodId: 'iso-37',
  peak: { low: 100, high: 300 },
  modulusMPa: null,
  geometry: {
    shape: 'rectangle',
    widthMm: 6.2,
    thicknessMm: 2,
    gaugeLengthMm: 25,
    parallelLengthMm: 33,
    gripSeparationMm: 65,
    endWidthMm: 20,
  },
  results: ['stress-at-strain'],
};

function extensometer(details: Record<string, unknown>, calibration: Partial<Calibration> = {}): Lab {
  const { calibrations } = sampleItem('extensometer', 'X');
  return labWith('X', { calibrations: calibrations.map((each) => ({ ...each, ...calibration })) }, details);
}

/** Whether the first train that is offered measures the strain with the sample lab's extensometer, which hangs on the frame already. */
function isMeasured(lab: Lab, needs: Needs): boolean {
  const rigs = [{ frameId: 'F', itemIds: ['C', 'X'], chamberC: null }];
  const [candidate] = matchTrains({ ...lab, rigs }, needs, PERIOD).candidates;
  return candidate?.links.some(({ role }) => role === 'extensometer') ?? false;
}

// ISO 37: stress at 100 % and 300 % strain over bench marks 25 mm apart (from memory, high): 3 × 25 = 75 mm.
describe('an extensometer for the stress at a large strain', () => {
  const needs = needsFor(RUBBER);
  const class_ = { standard: 'ASTM E83', className: 'D', from: 0, to: 100 };

  it('must follow the largest strain that is read', () => {
    expect(needs.strain.extension?.value).toBeCloseTo(75, 12);
    const following = (travelPlusMm: number) =>
      isMeasured(extensometer({ gaugeLengthsMm: [25], travelPlusMm }, class_), needs);
    expect(following(75)).toBe(true);
    expect(following(74.9)).toBe(false);
    expect(following(10)).toBe(false);
  });

  it('must be verified down to the smallest strain that is read, 1 × 25 mm', () => {
    const from = (fromMm: number) =>
      isMeasured(extensometer({ gaugeLengthsMm: [25], travelPlusMm: 100 }, { ...class_, from: fromMm }), needs);
    expect(from(25)).toBe(true);
    expect(from(25.1)).toBe(false);
  });
});

// ISO 527-1: modulus from 0.05 % strain; over 75 mm these are 0.0375 mm.
describe('an extensometer for a modulus', () => {
  const needs = needsFor({ results: ['modulus'] });

  it('must be verified down to the extension at which the modulus starts', () => {
    expect(needs.strain.smallestExtension?.value).toBeCloseTo(0.0375, 12);
    expect(isMeasured(extensometer({}, { from: 0.0375 }), needs)).toBe(true);
    expect(isMeasured(extensometer({}, { from: 0.038 }), needs)).toBe(false);
    const [refusal] = matchTrains(extensometer({}, { from: 1 }), needs, PERIOD).refusals;
    expect(refusal?.failing.map(({ rule, reason }) => `${rule} ${reason}`)).toEqual([
      'strain extension-below-verified',
    ]);
    expect(refusal?.failing[0]?.sentence).toMatch(/0\.0375\smm.*verified from 1\smm/);
  });

  it('is not served by two certificates of which each holds one end', () => {
    const [own] = sampleItem('extensometer', 'X').calibrations;
    const lab = labWith('X', {
      calibrations: [
        { ...own!, from: 0, to: 1 },
        { ...own!, from: 1, to: 10 },
      ],
    });
    expect(isMeasured(lab, needs)).toBe(false);
  });
});

// ASTM E111 asks for E83 class B-1 (from memory, high), which allows 0.25 % of the gauge length; ISO 9513 class 0.5 allows 0.5 %.
describe('an extensometer classed by another standard', () => {
  const needs = needsFor({
    methodId: 'astm-e111',
    speedMmPerMin: 1,
    geometry: { shape: 'rectangle', widthMm: 12.5, thicknessMm: 3, parallelLengthMm: 60, gripSeparationMm: 80 },
    modulusMPa: { low: 200_000, high: 210_000 },
    results: ['modulus'],
  });
  const of = (standard: string, className: string) =>
    isMeasured(extensometer({}, { standard, className, from: 0, to: 10 }), needs);

  it('must hold a class that allows no more error than the one asked for', () => {
    expect(of('ASTM E83', 'B-1')).toBe(true);
    expect(of('ISO 9513', '0.2')).toBe(true);
    expect(of('ISO 9513', '0.5')).toBe(false);
  });
});

// The lab's margin of 20 % on the high end of the force band: common practice, no source.
describe('a load cell', () => {
  const at = (high: number) =>
    matchTrains(SAMPLE_LAB, needsFor({ peak: { low: 1000, high }, results: ['peak-stress'] }), PERIOD);

  it('keeps the same margin above the peak as frame and grips', () => {
    const hungN = 9.80665 * 5.3;
    expect(at((5000 - hungN) / 1.2).candidates).toHaveLength(1);
    const [refusal] = at((5000 - hungN) / 1.2 + 0.01).refusals;
    expect(refusal?.failing.map(({ rule, reason }) => `${rule} ${reason}`)).toEqual([
      'cell-capacity cell-too-small-hung',
    ]);
  });

  it('says the margin where the peak alone is too much', () => {
    const [refusal] = at(4500).refusals;
    expect(refusal?.failing[0]?.sentence).toMatch(/Needs 5452\sN with margin and what hangs on it; C is rated 5000\sN/);
  });
});
