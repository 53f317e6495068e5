/**
 * One thing that is wrong with one field of an input: what was found, what is allowed, and a sentence for people.
 *
 * `field` is the path as the sender wrote it (`specimen.widthMm`, `readings[2].runsN[0]`), `unit` is the unit of both
 * `found` and `allowed` (empty for text), and `allowed` is worded (`0.1 to 300`, `one of N, kN`).
 */
export interface FieldProblem {
  field: string;
  found: unknown;
  allowed: string;
  unit: string;
  sentence: string;
}

/**
 * Builds a problem and its sentence, e.g. `gaugeLengthMm is 0 mm; allowed is more than 0 mm.`
 *
 * @param advice what to do about it; left out when the allowed range already says it
 */
export function fieldProblem(problem: Omit<FieldProblem, 'sentence'>, advice = ''): FieldProblem {
  const unit = problem.unit ? ` ${problem.unit}` : '';
  const found = isMissing(problem.found) ? 'is missing' : `is ${shown(problem.found)}${unit}`;
  const sentence = `${problem.field} ${found}; allowed is ${problem.allowed}${unit}.`;
  return { ...problem, sentence: advice ? `${sentence} ${advice}` : sentence };
}

function isMissing(found: unknown): boolean {
  return found === undefined || found === null || found === '';
}

const SHOWN_CHARACTERS = 60;

function shown(found: unknown): string {
  if (typeof found === 'number') return String(found);
  const text = JSON.stringify(found) ?? String(found);
  return text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
}
