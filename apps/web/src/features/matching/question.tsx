import type { AskField } from '#libs/matching/src/index.js';
import type { Quantity } from '#libs/units/src/index.js';
import { QuantityField } from '../../ui/fields/quantity-field.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick, Ticks } from '../../ui/fields/ticks.js';
import type { Typed } from '../../ui/fields/quantity-field.js';
import type { BatchDraft } from './batch-draft.js';
import { named } from './named.js';
import { ui } from '../../ui/styles.js';

interface Props {
  field: AskField;
  draft: BatchDraft;
  onChange: (draft: BatchDraft) => void;
  wrong: Record<string, string>;
}

/** One question of a method, with the field that its kind of answer needs. */
export function Question(props: Props) {
  const { field, draft, onChange, wrong } = props;
  const { field: path, label, help } = field;
  const common = { label, help, required: field.required, wrong: named(wrong[path], path, label) };
  switch (field.type) {
    case 'number':
      return <FigureQuestion {...props} />;
    case 'band':
      return <BandQuestion {...props} />;
    case 'choice':
      return (
        <SelectField
          {...common}
          value={draft.picked[path] ?? ''}
          choices={field.choices ?? []}
          onChange={(value) => onChange({ ...draft, picked: { ...draft.picked, [path]: value } })}
        />
      );
    case 'choices':
      return (
        <Ticks
          {...common}
          whole
          values={draft.many[path] ?? []}
          choices={field.choices ?? []}
          onChange={(values) => onChange({ ...draft, many: { ...draft.many, [path]: values } })}
        />
      );
    case 'flag':
      return (
        <div className={ui.field}>
          <Tick
            label={label}
            checked={draft.flags[path] ?? false}
            onChange={(on) => onChange({ ...draft, flags: { ...draft.flags, [path]: on } })}
          />
          <span className={ui.help}>{help}</span>
        </div>
      );
  }
}

const NOTHING: Typed = { value: '', unit: '' };

function FigureQuestion({ field, draft, onChange, wrong }: Props) {
  const { field: path, label, help } = field;
  const common = { label, help, required: field.required, wrong: named(wrong[path], path, label) };
  const set = (typed: Typed) => onChange({ ...draft, typed: { ...draft.typed, [path]: typed } });
  if (!field.unit)
    return (
      <TextField
        {...common}
        type="number"
        value={draft.typed[path]?.value ?? ''}
        onChange={(value) => set({ value, unit: '' })}
      />
    );
  return (
    <QuantityField
      {...common}
      quantity={field.quantity as Quantity}
      value={draft.typed[path] ?? { ...NOTHING, unit: field.unit }}
      onChange={set}
    />
  );
}

/** Two ends of one figure. */
function BandQuestion({ field, draft, onChange, wrong }: Props) {
  const { field: path, label, help } = field;
  const said = (at: string) => named(wrong[at], path, label);
  const empty = { ...NOTHING, unit: field.unit ?? '' };
  return (
    <QuantityField
      label={label}
      help={help}
      required={field.required}
      whole
      wrong={said(`${path}.low`) ?? said(`${path}.high`) ?? said(path)}
      quantity={field.quantity as Quantity}
      value={draft.typed[`${path}.low`] ?? empty}
      onChange={(low) => onChange(setBand(draft, path, low, draft.typed[`${path}.high`] ?? empty))}
      high={draft.typed[`${path}.high`] ?? empty}
      onHigh={(high) => onChange(setBand(draft, path, draft.typed[`${path}.low`] ?? empty, high))}
    />
  );
}

/** Both ends share the unit of the one that changed last. */
function setBand(draft: BatchDraft, path: string, low: Typed, high: Typed): BatchDraft {
  const changedLow = low !== draft.typed[`${path}.low`];
  const unit = changedLow ? low.unit : high.unit;
  return {
    ...draft,
    typed: { ...draft.typed, [`${path}.low`]: { ...low, unit }, [`${path}.high`]: { ...high, unit } },
  };
}
