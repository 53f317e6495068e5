import { Field } from './field.js';
import type { FieldFace } from './field.js';

/** A line of text, or several with `rows`; `list` offers what others have typed. */
export function TextField({
  value,
  onChange,
  type = 'text',
  rows,
  placeholder,
  autoFocus,
  autoComplete,
  list,
  inputMode,
  onBlur,
  ...common
}: FieldFace & {
  value: string;
  onChange: (value: string) => void;
  type?: 'text' | 'email' | 'password' | 'search' | 'number' | 'date' | 'datetime-local' | 'url';
  rows?: number;
  placeholder?: string;
  autoFocus?: boolean;
  autoComplete?: string;
  list?: readonly string[];
  inputMode?: 'decimal';
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
              inputMode={inputMode}
              list={list ? `${ids.id}-list` : undefined}
              required={common.required}
              step={type === 'number' ? 'any' : undefined}
              onBlur={onBlur}
              onChange={(event) => onChange(event.target.value)}
            />
            {list && <Offered id={`${ids.id}-list`} options={list} />}
          </>
        )
      }
    </Field>
  );
}

function Offered({ id, options }: { id: string; options: readonly string[] }) {
  return (
    <datalist id={id}>
      {options.map((option) => (
        <option key={option} value={option} />
      ))}
    </datalist>
  );
}
