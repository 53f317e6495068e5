import { fieldProblem, numberProblem, refuseIfAny } from '#libs/errors/src/index.js';
import { isWithinLimit } from '../within-limit.js';
import type { FieldProblem } from '#libs/errors/src/index.js';

/** The quick verification of a load cell: a known force (or torque, or extension) and what the frame showed. One unit. */
export interface ShiftCheck {
  /** The known value, not 0. */
  reference: number;
  reading: number;
  /** How far the reading may be off, ± % of the reference, above 0. */
  tolerancePct: number;
}

export interface ShiftCheckOutcome {
  /** Reading minus reference, in their unit. */
  error: number;
  /** In % of the reference's size. */
  errorPct: number;
  /** Largest error that would pass, in the unit of the reference. */
  allowed: number;
  passed: boolean;
}

/**
 * Whether a shift check passes; exactly on the tolerance passes.
 *
 * It shows that a cell still reads as it did, not that its calibration holds. A cell that fails is out of use at once.
 *
 * @throws {InvalidInput} when the reference is 0, the tolerance not above 0, or a figure not finite
 */
export function judgeShiftCheck({ reference, reading, tolerancePct }: ShiftCheck): ShiftCheckOutcome {
  refuseIfAny([
    referenceProblem(reference),
    numberProblem('reading', reading, { unit: '' }),
    numberProblem('tolerancePct', tolerancePct, { unit: '%', above: 0, max: 100 }),
  ]);
  const error = reading - reference;
  const allowed = (Math.abs(reference) * tolerancePct) / 100;
  return { error, errorPct: (100 * error) / Math.abs(reference), allowed, passed: isWithinLimit(error, allowed) };
}

function referenceProblem(reference: number): FieldProblem | null {
  if (reference !== 0) return numberProblem('reference', reference, { unit: '' });
  return fieldProblem({ field: 'reference', found: reference, allowed: 'a number other than 0', unit: '' });
}
