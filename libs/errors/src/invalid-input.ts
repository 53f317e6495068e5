import type { FieldProblem } from './field-problem.js';
import { LabError } from './lab-error.js';

/** An input that breaks at least one rule; it lists every problem found, not only the first. Code `input/invalid`. */
export class InvalidInput extends LabError {
  readonly problems: readonly FieldProblem[];

  /** @throws {RangeError} when no problem is given: an input without a problem is not invalid */
  constructor(problems: readonly FieldProblem[], options?: { cause?: unknown }) {
    if (problems.length === 0) throw new RangeError('InvalidInput needs at least one problem.');
    super('input/invalid', problems.map(({ sentence }) => sentence).join(' '), { problems }, options);
    this.problems = problems;
  }
}

/**
 * Throws when anything is wrong; a check is written as a list of problems and nulls.
 *
 * @throws {InvalidInput} listing every problem that is not null
 */
export function refuseIfAny(problems: readonly (FieldProblem | null)[]): void {
  const found = problems.filter((problem) => problem !== null);
  if (found.length > 0) throw new InvalidInput(found);
}
