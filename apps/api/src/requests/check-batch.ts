import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { checkAsk, END_SHAPES, GEOMETRY_LABELS } from '#libs/matching/src/index.js';
import type { Ask, Method } from '#libs/matching/src/index.js';
import { HAZARDS } from '../methods/check-method.js';
import { anything, flag, listOf, oneOf, orAbsent, orNull, record, text } from '../methods/shape.js';
import type { Shape } from '../methods/shape.js';

/** Any figure: its bounds are the core's to check, by the method. */
const number: Shape = (value, path) =>
  typeof value === 'number' ? [] : [fieldProblem({ field: path, found: shown(value), allowed: 'a number', unit: '' })];
const maybe = (shape: Shape): Shape => orAbsent(orNull(shape));
const band = maybe(record({ low: maybe(number), high: maybe(number) }));

/** Of what kind each part of an ask is: the core checks their meaning and relies on their kind. */
const ASK = record({
  strength: band,
  peak: band,
  modulusMPa: band,
  geometry: record({
    shape: maybe(text(40)),
    ...Object.fromEntries(Object.keys(GEOMETRY_LABELS).map((key) => [key, maybe(number)])),
  }),
  endShape: maybe(oneOf(END_SHAPES)),
  specimens: maybe(anything),
  temperatureC: maybe(number),
  results: maybe(listOf(text(80))),
  speedMmPerMin: maybe(number),
  travelMm: maybe(number),
  options: maybe(
    record({ contactExtensometer: maybe(flag), crossheadStrain: maybe(flag), lowerForceClass: maybe(flag) }),
  ),
  hazards: maybe(listOf(oneOf(HAZARDS))),
  confirmed: maybe(listOf(text(80))),
});

/** Everything that is wrong with what a batch asks for, by field below `path` (`batches[0].ask.` or nothing). */
export function batchProblems(method: Method, ask: Ask, asked: Record<string, unknown>, path = ''): FieldProblem[] {
  const shape = ASK(asked, '');
  const found = shape.length > 0 ? shape : checkAsk(method, ask);
  return found.map((problem) => below(path, problem));
}

function below(path: string, problem: FieldProblem): FieldProblem {
  const { field, sentence } = problem;
  const named = sentence.startsWith(field) ? `${path}${sentence}` : sentence;
  return { ...problem, field: `${path}${field}`, sentence: named };
}

function shown(value: unknown): unknown {
  return typeof value === 'object' && value !== null ? 'something else' : value;
}
