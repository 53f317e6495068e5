import type { FieldPathByValue, FieldValues } from 'react-hook-form';
import type { LabForm } from './use-lab-form.js';

/** A figure in a cell of a table, whose column says what it is; for a screen reader `label` does. */
export function FormCell<Values extends FieldValues>({
  form,
  name,
  label,
}: {
  form: LabForm<Values>;
  name: FieldPathByValue<Values, string>;
  label: string;
}) {
  return <input aria-label={label} inputMode="decimal" autoComplete="off" {...form.hook.register(name)} />;
}
