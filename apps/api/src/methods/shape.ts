import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem, NumberBounds } from '#libs/errors/src/index.js';

/** Checks a value at a path; anything may come in. */
export type Shape = (value: unknown, path: string) => FieldProblem[];

const wrong = (path: string, found: unknown, allowed: string): FieldProblem[] => [
  fieldProblem({
    field: path,
    found: typeof found === 'object' && found !== null ? 'something else' : found,
    allowed,
    unit: '',
  }),
];

export const text =
  (max: number, min = 1): Shape =>
  (value, path) =>
    typeof value === 'string' && value.length <= max && value.trim().length >= min
      ? []
      : wrong(path, value, `text of ${min} to ${max} characters`);

export const figure =
  (bounds: NumberBounds): Shape =>
  (value, path) => {
    const problem = numberProblem(path, value, bounds);
    return problem ? [problem] : [];
  };

export const oneOf =
  (choices: readonly string[]): Shape =>
  (value, path) =>
    choices.some((choice) => choice === value) ? [] : wrong(path, value, `one of ${choices.join(', ')}`);

export const flag: Shape = (value, path) => (typeof value === 'boolean' ? [] : wrong(path, value, 'true or false'));

export const orNull =
  (shape: Shape): Shape =>
  (value, path) =>
    value === null ? [] : shape(value, path);

/** May be left out, but not null. */
export const orAbsent =
  (shape: Shape): Shape =>
  (value, path) =>
    value === undefined ? [] : shape(value, path);

export const listOf =
  (shape: Shape, { min = 0, max = 60 } = {}): Shape =>
  (value, path) => {
    const fits = Array.isArray(value) && value.length >= min && value.length <= max;
    return fits
      ? value.flatMap((each, index) => shape(each, `${path}[${index}]`))
      : wrong(path, value, `a list of ${min} to ${max}`);
  };

/** An object with exactly these fields. */
export const record =
  (fields: Readonly<Record<string, Shape>>): Shape =>
  (value, path) => {
    if (!isRecord(value)) return wrong(path, value, 'an object');
    const strange = Object.keys(value).filter((key) => !Object.hasOwn(fields, key));
    return [
      ...Object.entries(fields).flatMap(([key, shape]) => shape(value[key], join(path, key))),
      ...strange.flatMap((key) => wrong(join(path, key), value[key], 'nothing; there is no such field')),
    ];
  };

/** A record whose figures at these keys may not fall. */
export const inOrder =
  (keys: readonly string[], shape: Shape): Shape =>
  (value, path) => {
    const found = shape(value, path);
    if (found.length > 0 || !isRecord(value)) return found;
    const figures = keys.map((key) => Number(value[key]));
    const at = figures.findIndex((each, index) => index > 0 && each < figures[index - 1]!);
    return at === -1
      ? []
      : wrong(join(path, keys[at]!), figures[at], `at least ${figures[at - 1]}, as ${keys[at - 1]}`);
  };

/** An object with any fields, each of the same shape. */
export const dictionary =
  (shape: Shape): Shape =>
  (value, path) =>
    isRecord(value)
      ? Object.entries(value).flatMap(([key, each]) => shape(each, join(path, key)))
      : wrong(path, value, 'an object');

/** One of several records, told apart by one of their fields. */
export const byField =
  (field: string, variants: Readonly<Record<string, Readonly<Record<string, Shape>>>>): Shape =>
  (value, path) => {
    const kind = isRecord(value) ? value[field] : undefined;
    const variant = typeof kind === 'string' && Object.hasOwn(variants, kind) ? variants[kind] : undefined;
    if (!variant) return wrong(join(path, field), kind, `one of ${Object.keys(variants).join(', ')}`);
    return record({ [field]: () => [], ...variant })(value, path);
  };

export const anything: Shape = () => [];

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function join(path: string, key: string): string {
  return path ? `${path}.${key}` : key;
}
