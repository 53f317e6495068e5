import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import type { FieldFace } from './field.js';
import type { Choice } from './select-field.js';
import { ui } from '../styles.js';
import styles from './fields.module.css';

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
    <label className={styles.tick}>
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
    <fieldset className={whole ? clsx(styles.field, styles.whole) : styles.field}>
      <legend>{label}</legend>
      <div className={ui.row}>
        {choices.map((choice) => (
          <Tick
            key={choice.value}
            label={choice.label}
            checked={values.includes(choice.value)}
            onChange={(on) => toggle(choice.value, on)}
          />
        ))}
      </div>
      {wrong && <span className={styles.wrong}>{wrong}</span>}
      {help && <span className={styles.help}>{help}</span>}
    </fieldset>
  );
}
