import type { ItemDetail, SaveItemBody } from '#libs/contract/src/index.js';
import { ITEM_FIELDS } from '#libs/matching/src/index.js';
import type { ItemField, ItemKind } from '#libs/matching/src/index.js';
import { formatNumber, isUnit, parseNumber, toInternal } from '#libs/units/src/index.js';
import type { Typed } from '../../ui/fields/quantity-field.js';
import { readPath, withPath } from './paths.js';

/** What is typed for one field: text for figures and lists, the value itself for choices and flags. */
export type FieldTyped = { typed: Typed } | { value: unknown };

/** An item as it is typed; its fields by their path, with slashes since dots would part it. */
export interface ItemTyped {
  kind: string;
  serialNumber: string;
  months: string;
  fields: Record<string, FieldTyped>;
}

/** The state has its own act, with a reason. */
export function fieldsOf(kind: string): readonly ItemField[] {
  return ITEM_FIELDS[kind as ItemKind].filter(({ path }) => path !== 'state');
}

/** The name of a field in the form. */
export function nameOf({ path }: Pick<ItemField, 'path'>): `fields.${string}` {
  return `fields.${keyOf(path)}`;
}

/** The field of the form that a path of the server is about. */
export function fieldOf(path: string, kind: string): string {
  if (path === 'calibrationIntervalMonths') return 'months';
  const field = fieldsOf(kind).find(
    (each) => path === each.path || (/^[.[]/.test(path.slice(each.path.length)) && path.startsWith(each.path)),
  );
  return field ? nameOf(field) : path;
}

export function startOf(item: ItemDetail | undefined): ItemTyped {
  const kind = item?.kind ?? 'grip';
  return {
    kind,
    serialNumber: item?.serialNumber ?? '',
    months: String(item?.calibrationIntervalMonths ?? 12),
    fields: fieldsFrom(kind, item),
  };
}

/** The fields of a kind as an item has them; of none, empty. */
export function fieldsFrom(kind: string, item?: ItemDetail): ItemTyped['fields'] {
  return Object.fromEntries(
    fieldsOf(kind).map((field) => [keyOf(field.path), typedOf(field, readPath(item, field.path))]),
  );
}

/** The fields of another kind, with what was typed of those that every kind has. */
export function fieldsForKind(kind: string, typed: ItemTyped['fields']): ItemTyped['fields'] {
  const shared = Object.entries(typed).filter(([key]) => !key.startsWith('details/'));
  return { ...fieldsFrom(kind), ...Object.fromEntries(shared) };
}

export function needsCalibration({ kind, fields }: ItemTyped): boolean {
  const field = fieldsOf(kind).find(({ path }) => path === 'needsCalibration');
  return !!field && valueOf(field, fields['needsCalibration'] ?? { value: false }) === true;
}

/** What the server is sent. */
export function itemBody(typed: ItemTyped): SaveItemBody {
  const { kind, serialNumber, months, fields } = typed;
  const calibrationIntervalMonths = needsCalibration(typed) ? figure(months, '') : null;
  let body: Record<string, unknown> = { kind, serialNumber, ratings: {}, details: {}, calibrationIntervalMonths };
  for (const field of fieldsOf(kind))
    body = withPath(body, field.path, valueOf(field, fields[keyOf(field.path)] ?? { value: null }));
  const { ratings } = body as { ratings: Record<string, unknown[]> };
  const given = Object.fromEntries(Object.entries(ratings).filter(([, points]) => points.length > 0));
  return { ...(body as Partial<SaveItemBody>), ratings: given } as SaveItemBody;
}

function keyOf(path: string): string {
  return path.replaceAll('.', '/');
}

/** How a kept value stands in the form. */
export function typedOf(field: ItemField, value: unknown): FieldTyped {
  const unit = field.unit ?? '';
  const text = (shown: string): FieldTyped => ({ typed: { value: shown, unit } });
  switch (field.type) {
    case 'number':
      return text(typeof value === 'number' ? plain(value) : '');
    case 'numbers':
      return text(Array.isArray(value) ? value.map((each) => plain(Number(each))).join('; ') : '');
    case 'rating-curve':
      return text(
        lines(
          value,
          (point: { temperatureC: number; rating: number }) => `${plain(point.rating)} at ${plain(point.temperatureC)}`,
        ),
      );
    case 'channels':
      return text(lines(value, (channel: { kind: string; count: number }) => `${channel.count} ${channel.kind}`));
    case 'speed-limits':
      return text(
        lines(
          value,
          (limit: { aboveForceN: number; speedMaxMmPerMin: number }) =>
            `${plain(limit.aboveForceN)} at ${plain(limit.speedMaxMmPerMin)}`,
        ),
      );
    default:
      return { value: value ?? (field.type === 'choices' ? [] : field.type === 'flag' ? false : null) };
  }
}

const plain = (value: number) => formatNumber(value, 12).replace(/\s/g, '');

function lines<Row>(value: unknown, show: (row: Row) => string): string {
  return Array.isArray(value) ? (value as Row[]).map(show).join('\n') : '';
}

/** The value that a field in the form stands for; a text that cannot be read is passed on for the server to refuse by name. */
export function valueOf(field: ItemField, typed: FieldTyped): unknown {
  if ('value' in typed) return field.type === 'text' ? (typed.value ?? '') : typed.value;
  const { value, unit } = typed.typed;
  const rows = value
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);
  switch (field.type) {
    case 'number':
      return value.trim() === '' ? null : figure(value, unit);
    case 'numbers':
      return value
        .split(';')
        .map((each) => each.trim())
        .filter(Boolean)
        .map((each) => figure(each, ''));
    case 'rating-curve':
      return rows.map((row) => pairOf(row)).map(([rating, temperatureC]) => ({ temperatureC, rating }));
    case 'speed-limits':
      return rows
        .map((row) => pairOf(row))
        .map(([aboveForceN, speedMaxMmPerMin]) => ({ aboveForceN, speedMaxMmPerMin }));
    case 'channels':
      return rows.map((row) => ({ count: figure(row.split(/\s+/)[0] ?? '', ''), kind: row.split(/\s+/)[1] ?? '' }));
    default:
      return value;
  }
}

function figure(text: string, unit: string): number | string {
  const number = parseNumber(text);
  if ('reason' in number) return text;
  return isUnit(unit) ? toInternal(number.value, unit) : number.value;
}

function pairOf(row: string): [number | string, number | string] {
  const [first = '', second = ''] = row.split(/\s+(?:at|@)\s+/);
  return [figure(first, ''), figure(second, '')];
}
