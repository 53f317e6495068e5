import type { ItemField } from '#libs/matching/src/index.js';
import { formatNumber, isUnit, parseNumber, toInternal } from '#libs/units/src/index.js';
import { QuantityField } from '../../ui/fields/quantity-field.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick, Ticks } from '../../ui/fields/ticks.js';
import type { Typed } from '../../ui/fields/quantity-field.js';
import { asText } from './paths.js';
import { words } from './fields-view.js';
import { ui } from '../../ui/styles.js';

/** What is typed for one field: text for figures and lists, the value itself for choices and flags. */
export type FieldTyped = { typed: Typed } | { value: unknown };
export type FormTyped = Record<string, FieldTyped>;

/** One field of an item, by its table. Ratings, channels and speed limits are short lists, one per line. */
export function ItemFieldInput({
  field,
  typed,
  onChange,
  wrong,
}: {
  field: ItemField;
  typed: FieldTyped;
  onChange: (typed: FieldTyped) => void;
  wrong: string | undefined;
}) {
  const common = { label: field.label, help: field.help, required: field.required, wrong };
  const value = 'value' in typed ? typed.value : null;
  const text = 'typed' in typed ? typed.typed : { value: '', unit: field.unit ?? '' };
  switch (field.type) {
    case 'number':
      if (field.unit)
        return (
          <QuantityField
            {...common}
            quantity={field.quantity}
            value={text}
            onChange={(next) => onChange({ typed: next })}
          />
        );
      return (
        <TextField {...common} value={text.value} onChange={(next) => onChange({ typed: { value: next, unit: '' } })} />
      );
    case 'flag':
      return (
        <div className={ui.field}>
          <Tick label={field.label} checked={value === true} onChange={(on) => onChange({ value: on })} />
          {field.help && <span className={ui.help}>{field.help}</span>}
          {wrong && <span className={ui.wrong}>{wrong}</span>}
        </div>
      );
    case 'choice':
      return (
        <SelectField
          {...common}
          none={field.required ? 'Choose …' : 'none'}
          value={asText(value)}
          onChange={(next) => onChange({ value: next || null })}
          choices={(field.choices ?? []).map((each) => ({ value: each, label: words(each) }))}
        />
      );
    case 'choices':
      return (
        <Ticks
          {...common}
          values={Array.isArray(value) ? value.map(String) : []}
          onChange={(next) => onChange({ value: next })}
          choices={(field.choices ?? []).map((each) => ({ value: each, label: words(each) }))}
        />
      );
    case 'numbers':
      return (
        <TextField
          {...common}
          help={`${field.help} Several with a semicolon between, in ${field.unit ?? 'figures'}.`}
          value={text.value}
          onChange={(next) => onChange({ typed: { value: next, unit: field.unit ?? '' } })}
        />
      );
    case 'rating-curve':
    case 'channels':
    case 'speed-limits':
      return (
        <TextField
          {...common}
          rows={2}
          help={`${field.help} ${LIST_HELP[field.type]}`}
          value={text.value}
          onChange={(next) => onChange({ typed: { value: next, unit: field.unit ?? '' } })}
        />
      );
    default:
      return <TextField {...common} value={asText(value)} onChange={(next) => onChange({ value: next })} />;
  }
}

const LIST_HELP = {
  'rating-curve': 'One per line: rating at temperature, e.g. 5000 at 23.',
  channels: 'One per line: how many and which, e.g. 2 strain.',
  'speed-limits': 'One per line: force and speed, e.g. 50000 at 100.',
};

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
