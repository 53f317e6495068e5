import { checkTrain } from '../answer/check-train.js';
import { labWith, needsFor, PERIOD, SAMPLE_LAB, SAMPLE_LINKS, verdictOn } from '#test/support/matching/sample-lab.js';

// Cell 70, two adapters of 45, grips of 120 twice, 115 between them: the test starts at 515 mm and ends at 520.
const START_MM = 515;
const reasonIn = (details: Record<string, unknown>) => {
  const { outcome, reason } = verdictOn('test-space', { lab: labWith('F', {}, details) });
  return outcome === 'pass' ? outcome : reason;
};

describe('test-space', () => {
  // 5 mm of travel and 10 mm of clearance on top.
  it.each([
    [START_MM + 16, 'pass'],
    [START_MM + 15, 'pass'],
    [START_MM + 14, 'too-tall'],
  ])('a frame that opens to %p mm: %s', (openingMaxMm, expected) => expect(reasonIn({ openingMaxMm })).toBe(expected));

  it.each([
    [START_MM, 'pass'],
    [START_MM + 1, 'too-short'],
  ])('a frame that closes to %p mm: %s', (openingMinMm, expected) => expect(reasonIn({ openingMinMm })).toBe(expected));

  it.each([
    [120, 'pass'],
    [119, 'too-wide'],
  ])('grips of 120 mm between columns of %p mm: %s', (columnClearanceMm, expected) =>
    expect(reasonIn({ columnClearanceMm })).toBe(expected),
  );

  it('keeps the ends from meeting in compression', () => {
    const pushed = (travelMm: number) => ({ ...needsFor({ travelMm }), direction: 'compression' as const });
    expect(verdictOn('test-space', { needs: pushed(115) }).outcome).toBe('pass');
    expect(verdictOn('test-space', { needs: pushed(116) }).reason).toBe('ends-meet');
  });

  it('says where the limit stops go: around the travel, never beyond the frame', () => {
    const stops = (lab = SAMPLE_LAB) =>
      checkTrain(lab, { frameId: 'F', links: SAMPLE_LINKS }, needsFor(), PERIOD)!.limitStops;
    // Halfway to where the grips touch (400 mm) would be 457.5 mm; the clearance of 10 mm is tighter.
    expect(stops()).toEqual({ startOpeningMm: 515, lowerStopMm: 505, upperStopMm: 530 });
    expect(stops(labWith('F', {}, { openingMaxMm: 525 })).upperStopMm).toBe(525);
  });
});
