import { addMonths } from '#libs/calendar/src/index.js';
import { fieldProblem, numberProblem, refuseIfAny } from '#libs/errors/src/index.js';
import { termOf } from '../limits/calibration-terms.js';
import type { FieldProblem } from '#libs/errors/src/index.js';

export interface DueRequest {
  /** The standard it was calibrated by, e.g. `ISO 7500-1`. */
  standard: string;
  /** UTC ms. */
  performedMs: number;
  /** The lab's own interval, whole months; null for the standard's. */
  intervalMonths: number | null;
  /** IANA time zone of the lab. */
  zone: string;
}

/**
 * When a calibration is due, UTC ms: the same time of day, so many calendar months later.
 *
 * @throws {InvalidInput} when the interval is not a whole number of months from 1 up to the standard's ceiling, or is missing
 * for a standard whose interval we do not know
 */
export function calibrationDueAt({ standard, performedMs, intervalMonths, zone }: DueRequest): number {
  const term = termOf(standard);
  const months = intervalMonths ?? term?.intervalMonths;
  refuseIfAny([
    numberProblem('intervalMonths', months, { unit: 'months', min: 1, whole: true }),
    ceilingProblem(months, standard),
  ]);
  return addMonths(performedMs, months!, zone);
}

function ceilingProblem(months: number | undefined, standard: string): FieldProblem | null {
  const ceilingMonths = termOf(standard)?.ceilingMonths ?? Infinity;
  if (months === undefined || months <= ceilingMonths) return null;
  const problem = { field: 'intervalMonths', found: months, allowed: `at most ${ceilingMonths}`, unit: 'months' };
  return fieldProblem(problem, `${standard} allows no longer.`);
}
