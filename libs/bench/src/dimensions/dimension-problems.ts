import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { Readings } from './dimensions-needed.js';

/** Bounds of a length at the bench, mm. */
const LENGTH = { unit: 'mm', above: 0, max: 10_000 } as const;
const MOST_READINGS = 20;

/**
 * What is wrong with lengths that somebody sent, by field.
 *
 * @param needed keys of the lengths that are measured on such specimens
 */
export function dimensionProblems(needed: readonly string[], dimensions: Readings): (FieldProblem | null)[] {
  const allowed = needed.length > 0 ? `one of ${needed.join(', ')}` : 'none: nothing is measured on these';
  return Object.entries(dimensions).flatMap(([key, readings]) => {
    const field = `dimensions.${key}`;
    if (!needed.includes(key)) return [fieldProblem({ field, found: key, allowed, unit: '' })];
    if (!Array.isArray(readings) || readings.length === 0 || readings.length > MOST_READINGS) {
      return [fieldProblem({ field, found: readings, allowed: `1 to ${MOST_READINGS} readings`, unit: '' })];
    }
    return readings.map((value, index) => numberProblem(`${field}[${index}]`, value, LENGTH));
  });
}
