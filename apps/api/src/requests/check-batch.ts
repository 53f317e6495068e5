import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { checkAsk } from '#libs/matching/src/index.js';
import type { Ask, Method } from '#libs/matching/src/index.js';

type Kind = 'record' | 'list' | 'figure' | 'text';

/** The parts of an ask, and of what kind each is: the core checks their meaning and relies on their kind. */
const PARTS: Record<string, Kind> = {
  strength: 'record',
  peak: 'record',
  geometry: 'record',
  endShape: 'text',
  specimens: 'figure',
  temperatureC: 'figure',
  results: 'list',
  speedMmPerMin: 'figure',
  travelMm: 'figure',
  options: 'record',
  hazards: 'list',
  confirmed: 'list',
};

const WORDS: Record<Kind, string> = {
  record: 'an object',
  list: 'a list of texts',
  figure: 'a number',
  text: 'a text',
};

/** Everything that is wrong with what a batch asks for, by field below `path` (`batches[0].ask.` or nothing). */
export function batchProblems(method: Method, ask: Ask, asked: Record<string, unknown>, path = ''): FieldProblem[] {
  const shape = shapeProblems(asked);
  const found = shape.length > 0 ? shape : checkAsk(method, ask);
  return found.map((problem) => below(path, problem));
}

/** What is not even of the kind that the core reads, and fields that no ask has. */
export function shapeProblems(asked: Record<string, unknown>): FieldProblem[] {
  return Object.entries(asked).flatMap(([field, value]) => {
    const kind = Object.hasOwn(PARTS, field) ? PARTS[field] : undefined;
    if (!kind) return [fieldProblem({ field, found: value, allowed: `one of ${Object.keys(PARTS).join(', ')}`, unit: '' })];
    return isOfKind(kind, field, value) ? [] : [fieldProblem({ field, found: value, allowed: WORDS[kind], unit: '' })];
  });
}

/** Only geometry must be there; what else is null was left open. */
function isOfKind(kind: Kind, field: string, value: unknown): boolean {
  if (value === null) return field !== 'geometry';
  switch (kind) {
    case 'record':
      return typeof value === 'object' && !Array.isArray(value);
    case 'list':
      return Array.isArray(value) && value.length <= 50 && value.every((each) => typeof each === 'string');
    case 'figure':
      return typeof value === 'number';
    case 'text':
      return typeof value === 'string';
  }
}

function below(path: string, problem: FieldProblem): FieldProblem {
  const { field, sentence } = problem;
  const named = sentence.startsWith(field) ? `${path}${sentence}` : sentence;
  return { ...problem, field: `${path}${field}`, sentence: named };
}
