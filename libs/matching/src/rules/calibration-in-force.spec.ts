import { checkTrain } from '../answer/check-train.js';
import type { SAMPLE_LAB } from '#test/support/matching/sample-lab.js';
import {
  DAY_MS,
  labWith,
  needsFor,
  PERIOD,
  sampleItem,
  SAMPLE_LINKS,
  verdictOn,
} from '#test/support/matching/sample-lab.js';

const [held] = sampleItem('load-cell', 'C').calibrations;
const due = (dueMs: number, validFromMs = held!.validFromMs) =>
  labWith('C', { calibrations: [{ ...held!, dueMs, validFromMs }] });
const told = (lab: typeof SAMPLE_LAB) => {
  const { outcome, reason } = verdictOn('calibration-in-force', { lab });
  return outcome === 'pass' ? outcome : `${outcome} ${reason}`;
};

describe('calibration-in-force', () => {
  it.each([
    ['the end of the period', PERIOD.endMs, 'pass'],
    ['a millisecond before its end', PERIOD.endMs - 1, 'caution lapses'],
    ['a millisecond after its start', PERIOD.startMs + 1, 'caution lapses'],
    ['its start', PERIOD.startMs, 'fail lapsed'],
  ])('a cell that is due at %s', (_when, dueMs, expected) => expect(told(due(dueMs))).toBe(expected));

  it('counts from the day that the calibration is valid', () => {
    expect(told(due(PERIOD.endMs + DAY_MS, PERIOD.startMs + DAY_MS))).toBe('caution lapses');
  });

  it('refuses an item that needs a calibration and has none', () => {
    expect(told(labWith('G', { needsCalibration: true }))).toBe('fail never-calibrated');
  });

  it('answers as windows: what is left of the period', () => {
    const check = checkTrain(
      due(PERIOD.startMs + 3 * DAY_MS),
      { frameId: 'F', links: SAMPLE_LINKS },
      needsFor(),
      PERIOD,
    );
    expect(check?.windows).toEqual([{ startMs: PERIOD.startMs, endMs: PERIOD.startMs + 3 * DAY_MS }]);
  });

  it('refuses items that are each usable, but never together', () => {
    const lab = labWith(
      'X',
      { heldWindows: [{ startMs: PERIOD.startMs, endMs: PERIOD.startMs + 3 * DAY_MS }] },
      {},
      due(PERIOD.startMs + 3 * DAY_MS),
    );
    expect(told(lab)).toBe('fail never-together');
  });
});
