import { choiceWords } from '#libs/matching/src/index.js';
import type { ItemField } from '#libs/matching/src/index.js';
import { QuantityField } from '../../ui/fields/quantity-field.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick, Ticks } from '../../ui/fields/ticks.js';
import { useFormField } from '../../ui/form/use-form-field.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { nameOf } from './item-typed.js';
import type { FieldTyped, ItemTyped } from './item-typed.js';
import { asText } from './paths.js';
import { ui } from '../../ui/styles.js';

interface InputProps {
  field: ItemField;
  typed: FieldTyped;
  onChange: (typed: FieldTyped) => void;
  wrong: string | undefined;
}

/** One field of an item, by its table. */
export function FormItemField({ form, field }: { form: LabForm<ItemTyped>; field: ItemField }) {
  const { value, set, face } = useFormField<ItemTyped, FieldTyped>({ form, name: nameOf(field), label: field.label });
  return <ItemFieldInput field={field} typed={value} onChange={set} wrong={face.wrong} />;
}

/** Ratings, channels and speed limits are short lists, one per line. */
function ItemFieldInput({ field, typed, onChange, wrong }: InputProps) {
  const common = { label: field.label, help: field.help, required: field.required, wrong };
  const value = 'value' in typed ? typed.value : null;
  const text = 'typed' in typed ? typed.typed : { value: '', unit: field.unit ?? '' };
  switch (field.type) {
    case 'number':
      return <NumberInput field={field} typed={typed} onChange={onChange} wrong={wrong} />;
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
          choices={(field.choices ?? []).map((each) => ({ value: each, label: choiceWords(each) }))}
        />
      );
    case 'choices':
      return (
        <Ticks
          {...common}
          values={Array.isArray(value) ? value.map(String) : []}
          onChange={(next) => onChange({ value: next })}
          choices={(field.choices ?? []).map((each) => ({ value: each, label: choiceWords(each) }))}
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

function NumberInput({ field, typed, onChange, wrong }: InputProps) {
  const common = { label: field.label, help: field.help, required: field.required, wrong };
  const text = 'typed' in typed ? typed.typed : { value: '', unit: field.unit ?? '' };
  if (!field.unit && field.fixedUnit)
    return (
      <QuantityField
        {...common}
        value={{ value: text.value, unit: field.fixedUnit }}
        onChange={({ value }) => onChange({ typed: { value, unit: '' } })}
      />
    );
  if (!field.unit)
    return (
      <TextField {...common} value={text.value} onChange={(next) => onChange({ typed: { value: next, unit: '' } })} />
    );
  return (
    <QuantityField {...common} quantity={field.quantity} value={text} onChange={(next) => onChange({ typed: next })} />
  );
}

const LIST_HELP = {
  'rating-curve': 'One per line: rating at temperature, e.g. 5000 at 23.',
  channels: 'One per line: how many and which, e.g. 2 strain.',
  'speed-limits': 'One per line: force and speed, e.g. 50000 at 100.',
};
