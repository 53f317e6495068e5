import type { InvalidInput } from '#libs/errors/src/index.js';
import { EXTENSION_CLASSES, extensionClassesOf } from '#libs/accuracy/src/index.js';
import { evaluateExtension } from './evaluate-extension.js';
import type { ExtensionClass } from '#libs/accuracy/src/index.js';
import type { ExtensionReadings, ExtensionStep } from './extension-readings.js';

const GAUGE_MM = 50;
const REFERENCES_MM = [0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5];

const exact = (referenceMm: number): ExtensionStep => ({ referenceMm, runs: [referenceMm, referenceMm] });
const off = (referenceMm: number, byMm: number): ExtensionStep => ({
  referenceMm,
  runs: [referenceMm, referenceMm + byMm],
});

const PERFECT: ExtensionReadings = Object.freeze({
  standard: 'ISO 9513',
  gaugeLengthNominalMm: GAUGE_MM,
  gaugeLengthMeasuredMm: GAUGE_MM,
  resolutionMm: 0.00001,
  steps: REFERENCES_MM.map(exact),
});

function classAt(referenceMm: number, readings: ExtensionReadings): string | null | undefined {
  return evaluateExtension(readings).steps.find((step) => step.referenceMm === referenceMm)?.className;
}

function withSteps(...changed: ExtensionStep[]): ExtensionReadings {
  return {
    ...PERFECT,
    steps: PERFECT.steps.map((step) => changed.find(({ referenceMm }) => referenceMm === step.referenceMm) ?? step),
  };
}

function worseThan({ standard, className }: ExtensionClass): string | null {
  const names = extensionClassesOf(standard).map((one) => one.className);
  return names[names.indexOf(className) + 1] ?? null;
}

describe.each(EXTENSION_CLASSES)('$standard class $className', (limits) => {
  const readings: ExtensionReadings = { ...PERFECT, standard: limits.standard, steps: [exact(0.05), exact(4)] };
  const at = (step: ExtensionStep) => classAt(step.referenceMm, { ...readings, steps: [step] });
  const absoluteMm = limits.biasMm ?? limits.biasStrain! * GAUGE_MM;
  const largerAt = (referenceMm: number) => Math.max(absoluteMm, (limits.biasPct / 100) * referenceMm);

  /** What a bias earns; two ASTM classes may share a limit, so that the better of them is earned. */
  const earned = (referenceMm: number) =>
    extensionClassesOf(limits.standard).find((one) => {
      const absolute = one.biasMm ?? one.biasStrain! * GAUGE_MM;
      return Math.max(absolute, (one.biasPct / 100) * referenceMm) >= largerAt(referenceMm);
    })!;

  it.each([0.05, 4, 40])(
    'holds at %p mm with the bias exactly on the larger limit, and not 0.1 % of it beyond',
    (referenceMm) => {
      for (const sign of [1, -1]) {
        expect(at(off(referenceMm, sign * largerAt(referenceMm)))).toBe(earned(referenceMm).className);
        expect(at(off(referenceMm, sign * largerAt(referenceMm) * 1.001))).not.toBe(earned(referenceMm).className);
      }
    },
  );

  it('holds with the resolution exactly on the absolute limit, and not just beyond', () => {
    const resolutionMm = limits.resolutionMm ?? limits.resolutionStrain! * GAUGE_MM;
    expect(classAt(0.001, { ...readings, resolutionMm, steps: [exact(0.001)] })).toBe(limits.className);
    expect(classAt(0.001, { ...readings, resolutionMm: resolutionMm * 1.001, steps: [exact(0.001)] })).toBe(
      worseThan(limits),
    );
  });
});

describe('the gauge length', () => {
  // ISO 9513: class 0.5 allows 0.5 % of 50 mm, 0.25 mm.
  it.each([
    [50.25, '0.5'],
    [50.2501, '1'],
    [49.75, '0.5'],
    [49.7499, '1'],
    [51, '2'],
    [51.01, null],
  ])('measured as %p mm instead of 50 mm leaves class %p', (gaugeLengthMeasuredMm, className) => {
    expect(classAt(1, { ...PERFECT, gaugeLengthMeasuredMm })).toBe(className);
  });

  it('does not count where there is none to measure', () => {
    const outcome = evaluateExtension({ ...PERFECT, gaugeLengthMeasuredMm: null });
    expect(outcome.gaugeLengthErrorPct).toBeNull();
    expect(outcome.ranges[0]?.className).toBe('0.2');
  });
});

describe('the crossover of ISO 9513', () => {
  it('lies at 0.3 mm for the bias: 3 µm and 1 % are the same there', () => {
    const steps = [off(0.2, 0.003), off(0.3, 0.003), off(0.5, 0.005)];
    expect(steps.map((step) => classAt(step.referenceMm, withSteps(step)))).toEqual(['1', '1', '1']);
    expect(classAt(0.5, withSteps(off(0.5, 0.0051)))).toBe('2');
  });
});

describe('the verified range of an extensometer', () => {
  it('is one range of the best class when all is well', () => {
    expect(evaluateExtension(PERFECT)).toMatchObject({
      ranges: [{ direction: 'extension', className: '0.2', from: 0.02, to: 5, unit: 'mm' }],
      notes: [],
    });
  });

  it('keeps the better class where it holds, beside the class that holds everywhere', () => {
    const { ranges } = evaluateExtension(withSteps(off(3, 0.012), off(5, 0.03)));
    // 12 µm of 3 mm is 0.4 %, 30 µm of 5 mm is 0.6 %.
    expect(ranges.map(({ className, from, to }) => [className, from, to])).toEqual([
      ['0.2', 0.02, 2],
      ['0.5', 0.02, 3],
      ['1', 0.02, 5],
    ]);
  });

  it('takes the longest unbroken row when a step in the middle fails altogether', () => {
    const { ranges } = evaluateExtension(withSteps(off(0.3, 0.1)));
    expect(ranges.map(({ className, from, to }) => [className, from, to])).toEqual([['0.2', 0.5, 5]]);
  });

  it('is the same for the same readings in any order', () => {
    expect(evaluateExtension({ ...PERFECT, steps: [...PERFECT.steps].reverse() })).toEqual(evaluateExtension(PERFECT));
  });

  it('needs two steps', () => {
    expect(evaluateExtension({ ...PERFECT, steps: [exact(1)] }).ranges).toEqual([]);
  });

  it('remarks on fewer than ten steps', () => {
    expect(evaluateExtension({ ...PERFECT, steps: PERFECT.steps.slice(1) }).notes.map(({ code }) => code)).toEqual([
      'few-steps',
    ]);
  });

  it('takes the run that is farthest off, with its sign', () => {
    const step = evaluateExtension(withSteps({ referenceMm: 1, runs: [1.002, 0.996] })).steps.find(
      ({ referenceMm }) => referenceMm === 1,
    );
    expect(step?.biasMm).toBeCloseTo(-0.004, 12);
    expect(step?.biasPct).toBeCloseTo(-0.4, 10);
    // Class 0.2 allows 0.2 % of 1 mm.
    expect(step?.heldBackBy).toEqual([
      { criterion: 'bias', found: step?.biasMm, limit: 0.002, unit: 'mm', met: false },
    ]);
  });
});

describe('extensometer readings that cannot be', () => {
  it('are all listed by field', () => {
    const steps = [{ referenceMm: 0, runs: [0.1, NaN] }, { referenceMm: 1, runs: [1] }, exact(1)];
    try {
      evaluateExtension({ ...PERFECT, gaugeLengthNominalMm: 0, gaugeLengthMeasuredMm: -1, resolutionMm: 0, steps });
      throw new Error('They were taken.');
    } catch (error) {
      expect((error as InvalidInput).problems.map(({ field }) => field)).toEqual([
        'gaugeLengthNominalMm',
        'gaugeLengthMeasuredMm',
        'resolutionMm',
        'steps[0].referenceMm',
        'steps[0].runs[1]',
        'steps[1].runs',
        'steps[2].referenceMm',
      ]);
    }
  });
});
