import { Field } from './field.js';
import type { FieldFace } from './field.js';

export interface Choice<Value extends string = string> {
  value: Value;
  label: string;
  /** Choices of one group stand together under its name. */
  group?: string;
}

/** @param none what the empty choice is called; then '' has to be a value */
export function SelectField<Value extends string>({
  value,
  onChange,
  choices,
  none,
  ...common
}: FieldFace & {
  value: Value;
  onChange: (value: Value) => void;
  choices: readonly Choice<Exclude<Value, ''>>[];
  none?: string;
}) {
  return (
    <Field {...common}>
      {(ids) => (
        <select {...ids} value={value} onChange={(event) => onChange(event.target.value as Value)}>
          {none !== undefined && <option value="">{none}</option>}
          {choices.filter(({ group }) => !group).map(option)}
          {[...new Set(choices.flatMap(({ group }) => group ?? []))].map((name) => (
            <optgroup key={name} label={name}>
              {choices.filter(({ group }) => group === name).map(option)}
            </optgroup>
          ))}
        </select>
      )}
    </Field>
  );
}

function option({ value, label }: Choice) {
  return (
    <option key={value} value={value}>
      {label}
    </option>
  );
}
