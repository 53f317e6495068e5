import type { InvalidInput } from '#libs/errors/src/index.js';
import { FORCE_CLASSES } from '#libs/accuracy/src/index.js';
import { evaluateForce } from './evaluate-force.js';
import type { ForceClass } from '#libs/accuracy/src/index.js';
import type { ForceReadings, ForceStep } from './force-readings.js';

/** A 10 000 N range that reads without any error: 0.1 N resolution, seven steps. */
const NOMINALS = [500, 1000, 2000, 4000, 6000, 8000, 10_000];

const exact = (nominal: number): ForceStep => ({ nominal, runs: [nominal, nominal, nominal], falling: null });

const PERFECT: ForceReadings = Object.freeze({
  direction: 'tension',
  unit: 'N',
  capacity: 10_000,
  resolution: 0.1,
  zeroResidual: 0,
  held: 'true',
  steps: NOMINALS.map(exact),
});

/** The same readings with another step in the place of the one at its force. */
function withStep(step: ForceStep, readings = PERFECT): ForceReadings {
  return { ...readings, steps: readings.steps.map((one) => (one.nominal === step.nominal ? step : one)) };
}

function classAt(nominal: number, readings: ForceReadings): string | null | undefined {
  return evaluateForce(readings).steps.find((step) => step.nominal === nominal)?.className;
}

const nextWorse = ({ className }: ForceClass) =>
  FORCE_CLASSES[FORCE_CLASSES.findIndex((one) => one.className === className) + 1]?.className ?? null;

describe('evaluateForce', () => {
  it('gives a perfect machine class 0.5 over all its steps', () => {
    expect(evaluateForce(PERFECT).ranges).toEqual([
      { direction: 'tension', className: '0.5', from: 500, to: 10_000, unit: 'N' },
    ]);
  });

  // With the true force held at 4000 N, an indication that is p % high reads 4000 · (1 + p/100).
  describe.each(FORCE_CLASSES)('class $className', (limits) => {
    const reading = (errorPct: number) => 4000 * (1 + errorPct / 100);
    const all = (errorPct: number): ForceStep => ({
      nominal: 4000,
      runs: [1, 2, 3].map(() => reading(errorPct)),
      falling: null,
    });

    it.each([1, -1])('holds with q exactly on its limit and not 0.001 % beyond (sign %p)', (sign) => {
      expect(classAt(4000, withStep(all(sign * limits.indicationPct)))).toBe(limits.className);
      expect(classAt(4000, withStep(all(sign * (limits.indicationPct + 0.001))))).toBe(nextWorse(limits));
    });

    it('holds with b exactly on its limit and not 0.001 % beyond', () => {
      const spread = (pct: number): ForceStep => ({
        nominal: 4000,
        runs: [reading(-pct / 2), 4000, reading(pct / 2)],
        falling: null,
      });
      expect(classAt(4000, withStep(spread(limits.repeatabilityPct)))).toBe(limits.className);
      expect(classAt(4000, withStep(spread(limits.repeatabilityPct + 0.001)))).toBe(nextWorse(limits));
    });

    it.each([1, -1])('holds with v exactly on its limit and not 0.001 % beyond (sign %p)', (sign) => {
      const falling = (pct: number): ForceStep => ({ ...exact(4000), falling: reading(sign * pct) });
      expect(classAt(4000, withStep(falling(limits.reversibilityPct)))).toBe(limits.className);
      expect(classAt(4000, withStep(falling(limits.reversibilityPct + 0.001)))).toBe(nextWorse(limits));
    });

    it.each([1, -1])('holds with f0 exactly on its limit and not 0.001 % beyond (sign %p)', (sign) => {
      const residual = (pct: number) => ({ ...PERFECT, zeroResidual: (sign * 10_000 * pct) / 100 });
      expect(classAt(4000, residual(limits.zeroPct))).toBe(limits.className);
      expect(classAt(4000, residual(limits.zeroPct + 0.001))).toBe(nextWorse(limits));
    });

    it('holds at its lowest force by resolution and not just below', () => {
      const resolution = 4000 / limits.lowestInResolutions;
      expect(classAt(4000, { ...PERFECT, resolution })).toBe(limits.className);
      expect(classAt(4000, { ...PERFECT, resolution: resolution * 1.001 })).toBe(nextWorse(limits));
    });
  });

  it('counts class 3 from 67 resolutions, although a is met from 66.7', () => {
    const outcome = evaluateForce({ ...PERFECT, resolution: 4000 / 66.8 });
    const step = outcome.steps.find(({ nominal }) => nominal === 4000);
    expect(step?.className).toBeNull();
    expect(step?.heldBackBy.map(({ criterion }) => criterion)).toEqual(['lowest-force']);
  });

  it('names what keeps a step from the next better class', () => {
    const step = evaluateForce(withStep({ nominal: 4000, runs: [4030, 4000, 4000], falling: null })).steps[3]!;
    // b = 30/4000 = 0.75 %, q = 10/4000 = 0.25 %: class 0.5 fails by b alone.
    expect(step.className).toBe('1');
    expect(step.heldBackBy).toEqual([{ criterion: 'b', found: 0.75, limit: 0.5, met: false }]);
  });

  it('takes q, b and v over the true force when the indicated one was held', () => {
    const steps = NOMINALS.map((nominal) =>
      nominal === 4000 ? { nominal, runs: [4016, 3984, 4015], falling: 4035 } : exact(nominal),
    );
    const step = evaluateForce({ ...PERFECT, held: 'indicated', steps }).steps[3]!;
    // Mean of the true forces 4005: q = −5/4005, b = 32/4005, v = 20/4015.
    expect(step.meanOfRuns).toBeCloseTo(4005, 10);
    expect(step.indicationPct).toBeCloseTo(-0.124844, 6);
    expect(step.repeatabilityPct).toBeCloseTo(0.799001, 6);
    expect(step.reversibilityPct).toBeCloseTo(0.498132, 6);
  });
});

describe('the verified range', () => {
  const off = (nominal: number, errorPct: number): ForceStep => {
    const reading = nominal * (1 + errorPct / 100);
    return { nominal, runs: [reading, reading, reading], falling: null };
  };

  it('takes its worst step: a class ends above the first step that misses it', () => {
    const { ranges } = evaluateForce(withStep(off(1000, 0.8)));
    expect(ranges.map(({ className, from, to }) => [className, from, to])).toEqual([
      ['0.5', 2000, 10_000],
      ['1', 500, 10_000],
    ]);
  });

  it('gives no class that fails above 20 % of the highest step', () => {
    const { ranges } = evaluateForce(withStep(off(2000, 0.8)));
    expect(ranges.map(({ className, from }) => [className, from])).toEqual([['1', 500]]);
  });

  it('gives no class that fails at the highest step', () => {
    expect(evaluateForce(withStep(off(10_000, 0.8))).ranges[0]?.className).toBe('1');
    expect(evaluateForce(withStep(off(10_000, 3.1))).ranges).toEqual([]);
  });

  it('does not jump over a step that fails altogether', () => {
    const { ranges } = evaluateForce(withStep(off(1000, 5)));
    expect(ranges.map(({ className, from }) => [className, from])).toEqual([['0.5', 2000]]);
  });

  it('needs five steps from 20 % to 100 %', () => {
    const steps = PERFECT.steps.filter(({ nominal }) => nominal !== 6000);
    const outcome = evaluateForce({ ...PERFECT, steps });
    expect(outcome.ranges).toEqual([]);
    const note = outcome.notes.find(({ code }) => code === 'too-few-steps');
    expect(note?.sentence).toMatch(/^4 steps lie between 20 % and 100 %/);
  });

  it('needs a step at 20 % or lower', () => {
    const steps = [2001, 3000, 4000, 6000, 8000, 10_000].map(exact);
    expect(evaluateForce({ ...PERFECT, steps }).ranges).toEqual([]);
    expect(evaluateForce({ ...PERFECT, steps: [...steps, exact(2000)] }).ranges).toHaveLength(1);
  });

  it('reaches no lower than the steps are close together: 2.5 apart is, 2.7 is not', () => {
    const reaching = (lowest: number) =>
      evaluateForce({ ...PERFECT, steps: [lowest, 1000, 2000, 4000, 6000, 8000, 10_000].map(exact) });
    expect(reaching(400).ranges[0]?.from).toBe(400);
    expect(reaching(370).ranges[0]?.from).toBe(1000);
    expect(reaching(370).notes.map(({ code }) => code)).toContain('gap');
  });

  it('ends at the highest step, and says so when that is below the capacity', () => {
    const outcome = evaluateForce({ ...PERFECT, capacity: 20_000 });
    expect(outcome.ranges[0]?.to).toBe(10_000);
    expect(outcome.notes.map(({ code }) => code)).toContain('below-capacity');
  });

  it('is the same for the same readings in any order', () => {
    expect(evaluateForce({ ...PERFECT, steps: [...PERFECT.steps].reverse() })).toEqual(evaluateForce(PERFECT));
  });
});

describe('reversibility', () => {
  it('can be left out: the class stands and the note says so', () => {
    const outcome = evaluateForce(PERFECT);
    expect(outcome.steps.every(({ reversibilityPct }) => reversibilityPct === null)).toBe(true);
    expect(outcome.notes).toEqual([{ code: 'v-not-determined', sentence: 'Reversibility was not determined.' }]);
  });

  it('wants four steps: three are remarked, four are not', () => {
    const fallingAt = (count: number) =>
      evaluateForce({
        ...PERFECT,
        steps: NOMINALS.map((nominal, index) => ({ ...exact(nominal), falling: index < count ? nominal : null })),
      });
    expect(fallingAt(3).notes.map(({ code }) => code)).toEqual(['v-at-few-steps']);
    expect(fallingAt(4).notes).toEqual([]);
  });
});

describe('readings that cannot be', () => {
  it('are all listed by field', () => {
    const bad: ForceReadings = {
      ...PERFECT,
      resolution: 0,
      zeroResidual: NaN,
      steps: [
        { nominal: 10_001, runs: [1, 2], falling: -1 },
        { nominal: 4000, runs: [4000, 0, Infinity], falling: null },
        { nominal: 4000, runs: [4000, 4000, 4000], falling: null },
      ],
    };
    try {
      evaluateForce(bad);
      throw new Error('It was taken.');
    } catch (error) {
      expect((error as InvalidInput).problems.map(({ field }) => field)).toEqual([
        'resolution',
        'zeroResidual',
        'steps[0].nominal',
        'steps[0].runs',
        'steps[0].falling',
        'steps[1].runs[1]',
        'steps[1].runs[2]',
        'steps[2].nominal',
      ]);
    }
  });

  it('are no reason to fail when there are none at all', () => {
    expect(evaluateForce({ ...PERFECT, steps: [] })).toMatchObject({ steps: [], ranges: [] });
  });

  it('of torque are evaluated, with a remark', () => {
    const outcome = evaluateForce({ ...PERFECT, direction: 'torque', unit: 'N·m' });
    expect(outcome.ranges[0]).toMatchObject({ direction: 'torque', unit: 'N·m' });
    expect(outcome.notes.map(({ code }) => code)).toContain('torque-by-analogy');
  });
});
