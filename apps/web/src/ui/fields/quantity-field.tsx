import { unitsOf } from '#libs/units/src/index.js';
import type { Quantity } from '#libs/units/src/index.js';
import { Field } from './field.js';
import type { FieldFace } from './field.js';
import styles from './fields.module.css';

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
}: FieldFace & {
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
        <div className={styles.pairInput}>
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
              <span className={styles.to}>to</span>
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
          <UnitChoice label={common.label} units={units} value={value.unit} onChange={setUnit} />
        </div>
      )}
    </Field>
  );
}

function UnitChoice({
  label,
  units,
  value,
  onChange,
}: {
  label: string;
  units: readonly string[];
  value: string;
  onChange: (unit: string) => void;
}) {
  if (units.length <= 1) return <span className={styles.unit}>{value || '–'}</span>;
  return (
    <select aria-label={`Unit of ${label}`} value={value} onChange={(event) => onChange(event.target.value)}>
      {units.map((unit) => (
        <option key={unit}>{unit}</option>
      ))}
    </select>
  );
}
