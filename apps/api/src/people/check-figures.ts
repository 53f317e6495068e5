import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';

/**
 * Compares settings of a core with those that a lab starts with: the same names all the way down, and what is a figure there
 * is a figure here, not negative.
 */
export function figureProblems(field: string, given: unknown, example: unknown): FieldProblem[] {
  if (typeof example === 'number') {
    const problem = numberProblem(field, given, { unit: '', min: 0, max: 1e9 });
    return problem ? [problem] : [];
  }
  if (Array.isArray(example)) return isTextList(given) ? [] : [problemOf(field, given, 'a list of words')];
  if (typeof example !== 'object' || example === null) {
    return typeof given === typeof example && given === example ? [] : [problemOf(field, given, String(example))];
  }
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    return [problemOf(field, given, 'an object')];
  const strange = Object.keys(given).filter((name) => !(name in example));
  return [
    ...strange.map((name) => problemOf(`${field}.${name}`, 'something', 'nothing; there is no such setting')),
    ...Object.entries(example).flatMap(([name, value]) =>
      figureProblems(`${field}.${name}`, (given as Record<string, unknown>)[name], value),
    ),
  ];
}

function isTextList(value: unknown): boolean {
  return (
    Array.isArray(value) && value.length <= 50 && value.every((one) => typeof one === 'string' && one.length <= 60)
  );
}

function problemOf(field: string, found: unknown, allowed: string): FieldProblem {
  return fieldProblem({ field, found: typeof found === 'object' ? 'something else' : found, allowed, unit: '' });
}
