import { useId } from 'react';
import type { ReactNode } from 'react';
import { unitsOf } from '#libs/units/src/index.js';
import type { Quantity } from '#libs/units/src/index.js';

interface Common {
  label: string;
  help?: ReactNode;
  wrong?: string | undefined;
  required?: boolean;
  whole?: boolean;
}

/** Label, input, help and refusal of one field, tied together for screen readers. */
export function Field({
  label,
  help,
  wrong,
  required,
  whole,
  children,
}: Common & { children: (ids: { id: string; 'aria-describedby'?: string; 'aria-invalid'?: true }) => ReactNode }) {
  const id = useId();
  const described = [help && `${id}-help`, wrong && `${id}-wrong`].filter(Boolean).join(' ');
  return (
    <div className={whole ? 'field whole' : 'field'}>
      <label htmlFor={id}>
        {label}
        {required === false && <span className="soft"> (if any)</span>}
      </label>
      {children({
        id,
        ...(described ? { 'aria-describedby': described } : {}),
        ...(wrong ? { 'aria-invalid': true as const } : {}),
      })}
      {wrong && (
        <span className="wrong" id={`${id}-wrong`}>
          {wrong}
        </span>
      )}
      {help && (
        <span className="help" id={`${id}-help`}>
          {help}
        </span>
      )}
    </div>
  );
}

export function TextField({
  value,
  onChange,
  type = 'text',
  rows,
  placeholder,
  autoFocus,
  autoComplete,
  list,
  onBlur,
  ...common
}: Common & {
  value: string;
  onChange: (value: string) => void;
  type?: 'text' | 'email' | 'password' | 'search' | 'number' | 'date' | 'datetime-local' | 'url';
  rows?: number;
  placeholder?: string;
  autoFocus?: boolean;
  autoComplete?: string;
  list?: readonly string[];
  onBlur?: () => void;
}) {
  return (
    <Field {...common}>
      {(ids) =>
        rows ? (
          <textarea
            {...ids}
            rows={rows}
            value={value}
            placeholder={placeholder}
            onBlur={onBlur}
            onChange={(event) => onChange(event.target.value)}
          />
        ) : (
          <>
            <input
              {...ids}
              type={type}
              value={value}
              placeholder={placeholder}
              autoFocus={autoFocus}
              autoComplete={autoComplete}
              list={list ? `${ids.id}-list` : undefined}
              required={common.required}
              step={type === 'number' ? 'any' : undefined}
              onBlur={onBlur}
              onChange={(event) => onChange(event.target.value)}
            />
            {list && (
              <datalist id={`${ids.id}-list`}>
                {list.map((option) => (
                  <option key={option} value={option} />
                ))}
              </datalist>
            )}
          </>
        )
      }
    </Field>
  );
}

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
}: Common & {
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

export function Ticks<Value extends string>({
  label,
  values,
  onChange,
  choices,
  help,
  wrong,
  whole,
}: Common & {
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

/** A figure as a person writes it: the text and the unit beside it. */
export interface Typed {
  value: string;
  unit: string;
}

/** A figure with its unit, both as typed; with `band`, two figures that share a unit. */
export function QuantityField({
  value,
  onChange,
  quantity,
  high,
  onHigh,
  onBlur,
  ...common
}: Common & {
  value: Typed;
  onChange: (value: Typed) => void;
  quantity?: Quantity | undefined;
  high?: Typed;
  onHigh?: (value: Typed) => void;
  onBlur?: () => void;
}) {
  const units = quantity ? unitsOf(quantity) : [];
  const setUnit = (unit: string) => {
    onChange({ ...value, unit });
    if (high && onHigh) onHigh({ ...high, unit });
  };
  return (
    <Field {...common}>
      {(ids) => (
        <div className="pair-input">
          <input
            {...ids}
            inputMode="decimal"
            autoComplete="off"
            value={value.value}
            onBlur={onBlur}
            onChange={(event) => onChange({ ...value, value: event.target.value })}
          />
          {high && onHigh && (
            <>
              <span className="to">to</span>
              <input
                aria-label={`${common.label}, highest`}
                inputMode="decimal"
                autoComplete="off"
                value={high.value}
                onBlur={onBlur}
                onChange={(event) => onHigh({ ...high, value: event.target.value })}
              />
            </>
          )}
          {units.length > 1 ? (
            <select
              aria-label={`Unit of ${common.label}`}
              value={value.unit}
              onChange={(event) => setUnit(event.target.value)}
            >
              {units.map((unit) => (
                <option key={unit}>{unit}</option>
              ))}
            </select>
          ) : (
            <span className="unit">{value.unit || '–'}</span>
          )}
        </div>
      )}
    </Field>
  );
}
