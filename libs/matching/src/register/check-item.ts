import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { CHANNEL_KINDS, ITEM_KINDS } from './item-choices.js';
import type { ItemField } from './item-field.js';
import { ITEM_FIELDS, ORDERED_FIELDS } from './item-fields.js';
import type { ItemKind } from './item.js';

/** Columns that the register keeps itself and that `checkItem` leaves alone. */
const KEPT_ELSEWHERE = ['id', 'kind', 'calibrations', 'heldWindows'];

/**
 * Checks what somebody entered for an item: every field of its kind there, of its type and within its bounds, nothing else besides.
 *
 * @param value anything; an item without its calibrations and held windows, which have checks of their own
 * @returns every problem, by field path; empty when the value may be registered
 */
export function checkItem(value: unknown): FieldProblem[] {
  const kind = at(value, 'kind');
  if (!isKind(kind)) return [problem('kind', kind, `one of ${ITEM_KINDS.join(', ')}`)];
  const fields = ITEM_FIELDS[kind];
  const found = fields.flatMap((field) => checkField(field, at(value, field.path)));
  return [
    ...found,
    ...unknownFields(value, fields),
    ...(found.length > 0 ? [] : [...disorder(value, fields), ...together(kind, value)]),
  ];
}

/** The value at a dotted path, undefined when the path leads nowhere. */
export function at(value: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((inner, key) => {
    const open = typeof inner === 'object' && inner !== null && Object.hasOwn(inner, key);
    return open ? (inner as Record<string, unknown>)[key] : undefined;
  }, value);
}

function isKind(kind: unknown): kind is ItemKind {
  return ITEM_KINDS.includes(kind as ItemKind);
}

function checkField(field: ItemField, value: unknown): FieldProblem[] {
  if (value === undefined || value === null || value === '') return absent(field);
  switch (field.type) {
    case 'text':
      return typeof value === 'string' && value.trim() === value && value.length <= (field.max ?? 200)
        ? []
        : [problem(field.path, value, `text of at most ${field.max ?? 200} characters without blanks around it`)];
    case 'flag':
      return typeof value === 'boolean' ? [] : [problem(field.path, value, 'yes or no')];
    case 'choice':
      return oneOf(field, value, field.path);
    case 'number':
      return numeric(field, value, field.path);
    default:
      return checkList(field, value);
  }
}

function checkList(field: ItemField, value: unknown): FieldProblem[] {
  if (!Array.isArray(value)) return [problem(field.path, value, 'a list')];
  if (field.required && value.length === 0) return absent(field);
  return value.flatMap((entry: unknown, index) => checkEntry(field, entry, `${field.path}.${index}`));
}

function checkEntry(field: ItemField, entry: unknown, path: string): FieldProblem[] {
  switch (field.type) {
    case 'choices':
      return oneOf(field, entry, path);
    case 'numbers':
      return numeric(field, entry, path);
    case 'rating-curve':
      return [
        ...bounded(`${path}.temperatureC`, at(entry, 'temperatureC'), '°C', -269, 2000),
        ...numeric(field, at(entry, 'rating'), `${path}.rating`),
      ];
    case 'channels': {
      const kind = at(entry, 'kind');
      const known = CHANNEL_KINDS.some((each) => each === kind);
      return [
        ...(known ? [] : [problem(`${path}.kind`, kind, `one of ${CHANNEL_KINDS.join(', ')}`)]),
        ...bounded(`${path}.count`, at(entry, 'count'), '', 0, 100),
      ];
    }
    default:
      return [
        ...bounded(`${path}.aboveForceN`, at(entry, 'aboveForceN'), 'N', 0, 1e8),
        ...bounded(`${path}.speedMaxMmPerMin`, at(entry, 'speedMaxMmPerMin'), 'mm/min', 0, 1e7),
      ];
  }
}

function absent(field: ItemField): FieldProblem[] {
  return field.required && field.type !== 'rating-curve'
    ? [problem(field.path, null, allowedWords(field), unitOf(field))]
    : [];
}

function unitOf({ unit, fixedUnit }: ItemField): string | undefined {
  return unit ?? fixedUnit;
}

function allowedWords(field: ItemField): string {
  if (field.choices) return `one of ${field.choices.join(', ')}`;
  if (field.type === 'number' || field.type === 'numbers')
    return `a number, at least ${field.min} and at most ${field.max}`;
  return field.type === 'flag' ? 'yes or no' : `a ${field.label.toLowerCase()}`;
}

function oneOf(field: ItemField, value: unknown, path: string): FieldProblem[] {
  return field.choices?.some((each) => each === value) ? [] : [problem(path, value, allowedWords(field))];
}

function numeric(field: ItemField, value: unknown, path: string): FieldProblem[] {
  return bounded(path, value, unitOf(field) ?? '', field.min ?? 0, field.max ?? 1e9);
}

function bounded(path: string, value: unknown, unit: string, min: number, max: number): FieldProblem[] {
  const found = numberProblem(path, value, { unit, min, max });
  return found ? [found] : [];
}

/** Fields that the kind does not have: a typing error in a column name must not vanish silently. */
function unknownFields(value: unknown, fields: readonly ItemField[]): FieldProblem[] {
  const known = fields.map(({ path }) => path);
  return leaves(value, '').flatMap((path) =>
    KEPT_ELSEWHERE.includes(path.split('.')[0]!) || known.some((each) => each === path || path.startsWith(`${each}.`))
      ? []
      : [problem(path, at(value, path), 'no such field for this kind of item')],
  );
}

function leaves(value: unknown, path: string): string[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value);
  return inner.flatMap(([key, each]) => leaves(each, path ? `${path}.${key}` : key));
}

function disorder(value: unknown, fields: readonly ItemField[]): FieldProblem[] {
  return ORDERED_FIELDS.flatMap(([low, high]) => {
    const [from, to] = [at(value, low), at(value, high)];
    const unit = fields.find(({ path }) => path === low)?.unit ?? '';
    const wrong = typeof from === 'number' && typeof to === 'number' && from > to;
    return wrong ? [problem(low, from, `at most ${to}, its own upper end`, unit)] : [];
  });
}

/** What only makes sense together: a load path needs one rating at least, a frame one capacity, faces a seat or a surface. */
function together(kind: ItemKind, value: unknown): FieldProblem[] {
  const number = (path: string) => Number(at(value, path) ?? 0);
  if (
    kind === 'frame' &&
    ['tension', 'compression'].every((way) => number(`details.${way}CapacityN`) === 0) &&
    number('details.torqueCapacityNm') === 0
  ) {
    return [problem('details.tensionCapacityN', 0, 'more than 0 in one direction at least', 'N')];
  }
  if (kind === 'load-cell' && number('details.capacityN') === 0 && number('details.torqueCapacityNm') === 0) {
    return [problem('details.capacityN', 0, 'more than 0, or a rated torque', 'N')];
  }
  if (kind === 'grip' && !at(value, 'details.faceSlot') && !at(value, 'details.fixedFaceSurface')) {
    return [problem('details.fixedFaceSurface', null, 'a surface, or a seat for jaw faces')];
  }
  const rated = ['tension', 'compression', 'torque'].some((way) => (at(value, `ratings.${way}.0`) ?? null) !== null);
  const inPath = ['grip', 'jaw-face', 'fixture', 'platen', 'adapter'].includes(kind);
  return inPath && !rated ? [problem('ratings.tension', null, 'a rating in one direction at least', 'N')] : [];
}

function problem(field: string, found: unknown, allowed: string, unit = ''): FieldProblem {
  return fieldProblem({ field, found: found ?? null, allowed, unit });
}
