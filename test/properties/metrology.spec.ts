import fc from 'fast-check';
import type { TimeWindow } from '#libs/calendar/src/index.js';
import { allowedExtension, classMeets, EXTENSION_CLASSES, FORCE_CLASSES } from '#libs/accuracy/src/index.js';
import { calibrationStatus, evaluateForce, windowsInForce } from '#libs/metrology/src/index.js';
import { fromInternal, toInternal } from '#libs/units/src/index.js';
import type { CalibrationPeriod, ForceReadings, ForceStep } from '#libs/metrology/src/index.js';

const windowAt = (windows: readonly TimeWindow[], ms: number) =>
  windows.find(({ startMs, endMs }) => startMs <= ms && ms < endMs) ?? null;

const NOMINALS = [10, 20, 50, 100, 200, 400, 600, 800, 1000];

/** Errors in thousandths of a percent, so that limits are hit exactly now and then. */
const errorPct = fc.integer({ min: -1200, max: 1200 }).map((thousandths) => thousandths / 1000);

function stepAt(nominal: number): fc.Arbitrary<ForceStep> {
  const reading = errorPct.map((pct) => nominal * (1 + pct / 100));
  return fc.record({
    nominal: fc.constant(nominal),
    runs: fc.tuple(reading, reading, reading),
    falling: fc.option(reading),
  });
}

const readings: fc.Arbitrary<ForceReadings> = fc.record({
  direction: fc.constantFrom('tension', 'compression'),
  unit: fc.constant('N'),
  capacity: fc.constant(1000),
  resolution: fc.constantFrom(0.01, 0.02, 0.05, 0.1),
  zeroResidual: fc.constantFrom(0, 0.5, -0.5, 1, 2.5),
  held: fc.constantFrom('indicated', 'true'),
  steps: fc.tuple(...NOMINALS.map(stepAt)),
});

const rankOf = (className: string | null) =>
  className === null ? FORCE_CLASSES.length : FORCE_CLASSES.findIndex((one) => one.className === className);

function scaled(one: ForceReadings, by: (value: number) => number): ForceReadings {
  const steps = one.steps.map(({ nominal, runs, falling }) => ({
    nominal: by(nominal),
    runs: runs.map(by),
    falling: falling === null ? null : by(falling),
  }));
  return {
    ...one,
    capacity: by(one.capacity),
    resolution: by(one.resolution),
    zeroResidual: by(one.zeroResidual),
    steps,
  };
}

const classesOf = (one: ForceReadings) => evaluateForce(one).steps.map(({ className }) => className);

describe('force verification', () => {
  it('gives the same classes in whatever unit the readings were entered', () => {
    fc.assert(
      fc.property(readings, fc.constantFrom('kN', 'lbf', 'kgf', 'ozf', 'kip'), (one, unit) => {
        const entered = scaled(one, (value) => toInternal(fromInternal(value, unit), unit));
        expect(classesOf(entered)).toEqual(classesOf(one));
        expect(classesOf(scaled(one, (value) => value / 1000))).toEqual(classesOf(one));
      }),
      { numRuns: 300 },
    );
  });

  it('gives a range only over steps that are at least that good, from its highest step down', () => {
    fc.assert(
      fc.property(readings, (one) => {
        const { steps, ranges } = evaluateForce(one);
        for (const { className, from, to } of ranges) {
          const within = steps.filter(({ nominal }) => nominal >= from && nominal <= to);
          expect(to).toBe(1000);
          expect(from).toBeLessThanOrEqual(200);
          expect(Math.max(...within.map((step) => rankOf(step.className)))).toBeLessThanOrEqual(rankOf(className));
        }
      }),
      { numRuns: 300 },
    );
  });

  it('never finds a machine better when an error grows, nor worse when reversibility is left out', () => {
    fc.assert(
      fc.property(readings, fc.nat(NOMINALS.length - 1), (one, at) => {
        const grown = one.steps.map((step, index) => {
          if (index !== at) return step;
          const highest = Math.max(...step.runs);
          return { ...step, runs: step.runs.map((run) => (run === highest ? run + step.nominal : run)) };
        });
        const without = one.steps.map((step) => ({ ...step, falling: null }));
        const before = rankOf(classesOf(one)[at]!);
        expect(rankOf(classesOf({ ...one, steps: without })[at]!)).toBeLessThanOrEqual(before);
        expect(rankOf(classesOf({ ...one, steps: grown })[at]!)).toBe(FORCE_CLASSES.length);
      }),
      { numRuns: 300 },
    );
  });

  it('does not mind the order of the steps', () => {
    fc.assert(
      fc.property(
        readings,
        fc.array(fc.nat(1e6), { minLength: NOMINALS.length, maxLength: NOMINALS.length }),
        (one, keys) => {
          const shuffled = one.steps.map((step, index) => ({ step, key: keys[index]! })).sort((a, b) => a.key - b.key);
          expect(evaluateForce({ ...one, steps: shuffled.map(({ step }) => step) })).toEqual(evaluateForce(one));
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('calibration dates', () => {
  const period: fc.Arbitrary<CalibrationPeriod> = fc.record({
    validFromMs: fc.integer({ min: 0, max: 60 }),
    dueMs: fc.integer({ min: 0, max: 80 }),
    withdrawnFromMs: fc.option(fc.integer({ min: 0, max: 80 })),
  });

  it('an item is in force exactly at the instants of its windows', () => {
    fc.assert(
      fc.property(fc.array(period, { maxLength: 6 }), fc.integer({ min: 0, max: 90 }), (calibrations, nowMs) => {
        const { name, dueMs } = calibrationStatus({ needsCalibration: true, outOfUse: false, calibrations }, nowMs, 0);
        const window = windowAt(windowsInForce(calibrations), nowMs);
        expect(name === 'in-force').toBe(window !== null);
        if (window) expect(dueMs).toBe(window.endMs);
      }),
      { numRuns: 1000 },
    );
  });

  it('the newest calibration that has begun decides, asked instant by instant', () => {
    fc.assert(
      fc.property(fc.array(period, { maxLength: 6 }), fc.integer({ min: 0, max: 90 }), (calibrations, nowMs) => {
        const begun = calibrations.filter(({ validFromMs }) => validFromMs <= nowMs);
        const newest = begun.filter(
          ({ validFromMs }) => validFromMs === Math.max(...begun.map((one) => one.validFromMs)),
        );
        const stands = newest.every(
          ({ dueMs, withdrawnFromMs }) => nowMs < dueMs && nowMs < (withdrawnFromMs ?? Infinity),
        );
        expect(windowAt(windowsInForce(calibrations), nowMs) !== null).toBe(newest.length > 0 && stands);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('extensometer classes', () => {
  it('a class meets another only where it allows no more error at any strain that is read', () => {
    const strain = fc.double({ min: 0, max: 8, noNaN: true });
    const class_ = fc.constantFrom(...EXTENSION_CLASSES);
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    let met = 0;
    fc.assert(
      fc.property(
        class_,
        class_,
        fc.double({ min: 1, max: 500, noNaN: true }),
        strain,
        strain,
        share,
        (held, needed, gaugeLengthMm, a, b, at) => {
          const [strainFrom, strainTo] = [Math.min(a, b), Math.max(a, b)];
          if (!classMeets(held, needed, { gaugeLengthMm, strainFrom, strainTo })) return;
          met += 1;
          const extensionMm = (strainFrom + at * (strainTo - strainFrom)) * gaugeLengthMm;
          const [one, other] = [held, needed].map((each) => allowedExtension(each, extensionMm, gaugeLengthMm));
          expect(one!.biasMm).toBeLessThanOrEqual(other!.biasMm * (1 + 1e-12));
          expect(one!.resolutionMm).toBeLessThanOrEqual(other!.resolutionMm * (1 + 1e-12));
          expect(held.gaugeLengthPct).toBeLessThanOrEqual(needed.gaugeLengthPct);
        },
      ),
      { numRuns: 3000 },
    );
    expect(met).toBeGreaterThan(500);
  });
});
