import { fieldProblem } from './field-problem.js';
import type { FieldProblem } from './field-problem.js';

/** What a number may be. All bounds are in `unit`; `above` and `below` exclude the bound itself. */
export interface NumberBounds {
  unit: string;
  min?: number;
  max?: number;
  above?: number;
  below?: number;
  whole?: boolean;
}

/**
 * Checks one number against its bounds.
 *
 * @param value anything; only a finite number can pass (no text, no NaN, no infinity)
 * @returns the problem, or null when the number is allowed
 */
export function numberProblem(field: string, value: unknown, bounds: NumberBounds): FieldProblem | null {
  if (typeof value === 'number' && Number.isFinite(value) && isWithin(value, bounds)) return null;
  return fieldProblem({ field, found: plain(value), allowed: allowedWords(bounds), unit: bounds.unit });
}

function isWithin(value: number, { min, max, above, below, whole }: NumberBounds): boolean {
  return (
    (min === undefined || value >= min) &&
    (max === undefined || value <= max) &&
    (above === undefined || value > above) &&
    (below === undefined || value < below) &&
    (!whole || Number.isInteger(value))
  );
}

function allowedWords({ min, max, above, below, whole }: NumberBounds): string {
  const lower = min !== undefined ? `at least ${min}` : above !== undefined ? `more than ${above}` : '';
  const upper = max !== undefined ? `at most ${max}` : below !== undefined ? `less than ${below}` : '';
  const range = [lower, upper].filter(Boolean).join(' and ');
  return [whole ? 'a whole number' : 'a number', range].filter(Boolean).join(', ');
}

/** NaN and infinities have no JSON form, so that they are told as words. */
function plain(value: unknown): unknown {
  return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;
}
