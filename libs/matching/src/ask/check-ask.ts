import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { Ask, AskField } from './ask.js';
import { askFields, GEOMETRY_LABELS, hasStrength } from './ask-fields.js';
import { at } from '../register/check-item.js';
import type { GeometryKey, Method } from '../register/method.js';

/**
 * What is missing or impossible in an ask, by field, with the allowed range and unit.
 *
 * @param method the version that the ask names
 * @returns every problem; empty when needs can be derived
 */
export function checkAsk(method: Method, ask: Ask): FieldProblem[] {
  const shape = ask.geometry.shape;
  const fields = fieldsOf(method).filter((field) => !field.shapes || field.shapes.includes(shape));
  return [
    ...fields.flatMap((field) => checkField(field, at(ask, field.field))),
    ...loadKnown(method, ask),
    ...fitsTogether(method, ask),
  ];
}

const known = new WeakMap<Method, readonly AskField[]>();

/** A version of a method never changes, so that its fields are listed once. */
function fieldsOf(method: Method): readonly AskField[] {
  const found = known.get(method) ?? askFields(method);
  known.set(method, found);
  return found;
}

function checkField(field: AskField, value: unknown): FieldProblem[] {
  if (value === undefined || value === null) {
    return field.required
      ? [fieldProblem({ field: field.field, found: null, allowed: allowed(field), unit: field.unit ?? '' })]
      : [];
  }
  switch (field.type) {
    case 'number':
      return bounded(field, field.field, value, field.field === 'specimens');
    case 'band':
      return checkBand(field, value);
    case 'choice':
      return !field.choices || field.choices.some((each) => each.value === value) ? [] : [choiceProblem(field, value)];
    case 'choices':
      return checkChoices(field, value);
    case 'flag':
      return typeof value === 'boolean' ? [] : [choiceProblem(field, value)];
  }
}

function bounded(field: AskField, path: string, value: unknown, whole = false): FieldProblem[] {
  const found = numberProblem(path, value, {
    unit: field.unit ?? '',
    min: field.min ?? 0,
    max: field.max ?? 1e12,
    whole,
  });
  return found ? [found] : [];
}

function checkBand(field: AskField, value: unknown): FieldProblem[] {
  const [low, high] = [at(value, 'low'), at(value, 'high')];
  const ends = [...bounded(field, `${field.field}.low`, low), ...bounded(field, `${field.field}.high`, high)];
  if (ends.length > 0 || Number(low) <= Number(high)) return ends;
  return [
    fieldProblem({
      field: `${field.field}.low`,
      found: low,
      allowed: `at most the high end, ${String(high)}`,
      unit: field.unit ?? '',
    }),
  ];
}

function checkChoices(field: AskField, value: unknown): FieldProblem[] {
  if (!Array.isArray(value) || value.length === 0) return [choiceProblem(field, value)];
  const strays = value.filter((each: unknown) => !field.choices?.some((choice) => choice.value === each));
  return strays.map((each: unknown) => choiceProblem(field, each));
}

function choiceProblem(field: AskField, value: unknown): FieldProblem {
  return fieldProblem({ field: field.field, found: value, allowed: allowed(field), unit: '' });
}

function allowed(field: AskField): string {
  if (field.choices) return `one of ${field.choices.map(({ value }) => value).join(', ')}`;
  if (field.type === 'band') return `a band from low to high between ${field.min} and ${field.max}`;
  return field.type === 'number'
    ? `a number, at least ${field.min} and at most ${field.max}`
    : field.type === 'flag'
      ? 'yes or no'
      : 'a choice';
}

/** The load must come from somewhere: declared, or a strength, or a material. */
function loadKnown(method: Method, ask: Ask): FieldProblem[] {
  if (!hasStrength(method) || ask.peak || ask.strength || ask.materialId) return [];
  const allowedWords = 'a material of the library, or a strength band, or the highest load expected';
  return [fieldProblem({ field: 'materialId', found: null, allowed: allowedWords, unit: '' })];
}

/** Pairs of figures that a real specimen has in this order. */
const SMALLER: readonly (readonly [GeometryKey, GeometryKey, strict: boolean])[] = [
  ['innerDiameterMm', 'outerDiameterMm', true],
  ['gaugeLengthMm', 'parallelLengthMm', false],
  ['parallelLengthMm', 'gripSeparationMm', false],
  ['gaugeLengthMm', 'gripSeparationMm', false],
  ['gripSeparationMm', 'lengthMm', true],
  ['spanMm', 'lengthMm', false],
  ['crackLengthMm', 'widthMm', true],
];

function fitsTogether(method: Method, ask: Ask): FieldProblem[] {
  const { geometry } = ask;
  const asked = new Set<GeometryKey>(
    method.geometry.filter(({ shapes }) => !shapes || shapes.includes(geometry.shape)).map(({ key }) => key),
  );
  return SMALLER.flatMap(([small, large, strict]) => {
    const [a, b] = [geometry[small], geometry[large]];
    if (a === undefined || b === undefined || !asked.has(small) || !asked.has(large)) return [];
    if (strict ? a < b : a <= b) return [];
    const words = `${strict ? 'less than' : 'at most'} the ${GEOMETRY_LABELS[large].toLowerCase()}, ${b}`;
    return [fieldProblem({ field: `geometry.${small}`, found: a, allowed: words, unit: 'mm' })];
  });
}
