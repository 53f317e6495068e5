import type { ReactNode } from 'react';
import { useFieldArray } from 'react-hook-form';
import type { ArrayPath, FieldArray, FieldValues } from 'react-hook-form';
import { ui } from '../styles.js';
import type { LabForm } from './use-lab-form.js';

/**
 * Rows of the same fields, of which a person adds and takes out some.
 *
 * @param row draws the fields of the row at that place; their names begin with `name` and the place
 * @param fresh what a new row holds
 * @param add what the button says that adds one
 */
export function FormList<Values extends FieldValues, Name extends ArrayPath<Values>>({
  form,
  name,
  label,
  fresh,
  add,
  row,
}: {
  form: LabForm<Values>;
  name: Name;
  label: string;
  fresh: FieldArray<Values, Name>;
  add: string;
  row: (at: number) => ReactNode;
}) {
  const { fields, append, remove } = useFieldArray({ control: form.control, name });
  return (
    <fieldset className={ui.stackTight} aria-label={label}>
      {fields.map(({ id }, at) => (
        <div key={id} className={ui.rowEnd}>
          {row(at)}
          <button
            type="button"
            className={ui.buttonSmall}
            aria-label={`Take out line ${at + 1} of ${label}`}
            onClick={() => remove(at)}
          >
            ×
          </button>
        </div>
      ))}
      <div>
        <button type="button" className={ui.buttonSmall} onClick={() => append(fresh)}>
          {add}
        </button>
      </div>
    </fieldset>
  );
}
