import { refuseIfAny } from '#libs/errors/src/index.js';
import { FORCE_CLASSES } from '#libs/accuracy/src/index.js';
import { rangeReaching } from './force-range.js';
import { forceErrors } from './force-errors.js';
import { forceFindings } from './force-criteria.js';
import { forceReadingProblems } from './force-readings.js';
import { schemeNotes } from './force-scheme.js';
import type { Note, VerifiedRange } from '../outcome.js';
import type { ForceErrors } from './force-errors.js';
import type { ForceFinding } from './force-criteria.js';
import type { ForceReadings } from './force-readings.js';

/** What was found at one step. */
export interface ForceStepOutcome extends ForceErrors {
  nominal: number;
  /** The best class whose limits are all met here; null when not even the last one's are. */
  className: string | null;
  /** What keeps the step from the next better class (from the last class, when it has none); empty for the best. */
  heldBackBy: ForceFinding[];
}

export interface ForceOutcome {
  /** By force, the smallest first. */
  steps: ForceStepOutcome[];
  /** One range for each class that reaches lower than the better ones; empty when no class can be given. */
  ranges: VerifiedRange[];
  notes: Note[];
}

/**
 * From readings to class and verified range of one direction, ISO 7500-1.
 *
 * A range takes its worst step: class by class, it runs from the highest step down as long as every step meets the class.
 * It is given only when it reaches down to 20 % of its highest step with at least five steps from there up.
 *
 * @throws {InvalidInput} listing every reading that cannot be (see `forceReadingProblems`)
 */
export function evaluateForce(readings: ForceReadings): ForceOutcome {
  refuseIfAny(forceReadingProblems(readings));
  const sorted = [...readings.steps].sort((a, b) => a.nominal - b.nominal);
  const steps = sorted.map((step) => ({ nominal: step.nominal, ...classed(forceErrors(step, readings)) }));
  return { steps, ranges: rangesOf(steps, readings), notes: schemeNotes(sorted, readings) };
}

function classed(errors: ForceErrors): Omit<ForceStepOutcome, 'nominal'> {
  const unmet = FORCE_CLASSES.map((limits) => forceFindings(errors, limits).filter(({ met }) => !met));
  const best = unmet.findIndex((findings) => findings.length === 0);
  return {
    ...errors,
    className: FORCE_CLASSES[best]?.className ?? null,
    heldBackBy: (best === -1 ? unmet.at(-1) : unmet[best - 1]) ?? [],
  };
}

function rangesOf(steps: readonly ForceStepOutcome[], { direction, unit }: ForceReadings): VerifiedRange[] {
  const ranges: VerifiedRange[] = [];
  for (const [rank, { className }] of FORCE_CLASSES.entries()) {
    const goodEnough = FORCE_CLASSES.slice(0, rank + 1).map((better) => better.className as string);
    const range = rangeReaching(steps, (step) => step.className !== null && goodEnough.includes(step.className));
    if (range && range.from < (ranges.at(-1)?.from ?? Infinity)) ranges.push({ direction, className, unit, ...range });
  }
  return ranges;
}
