import type { ReactNode } from 'react';
import type { FieldFace } from './field.js';
import type { Choice } from './select-field.js';

/** One thing that is so or not. */
export function Tick({
  label,
  checked,
  onChange,
  disabled,
}: {
  label: ReactNode;
  checked: boolean;
  onChange: (checked: boolean) => void;
  disabled?: boolean;
}) {
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={checked}
        disabled={disabled}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span>{label}</span>
    </label>
  );
}

/** Any number of a few choices. */
export function Ticks<Value extends string>({
  label,
  values,
  onChange,
  choices,
  help,
  wrong,
  whole,
}: FieldFace & {
  values: readonly Value[];
  onChange: (values: Value[]) => void;
  choices: readonly Choice<Value>[];
}) {
  const toggle = (value: Value, on: boolean) =>
    onChange(on ? [...values, value] : values.filter((other) => other !== value));
  return (
    <fieldset className={whole ? 'field whole' : 'field'}>
      <legend>{label}</legend>
      <div className="row">
        {choices.map((choice) => (
          <Tick
            key={choice.value}
            label={choice.label}
            checked={values.includes(choice.value)}
            onChange={(on) => toggle(choice.value, on)}
          />
        ))}
      </div>
      {wrong && <span className="wrong">{wrong}</span>}
      {help && <span className="help">{help}</span>}
    </fieldset>
  );
}
