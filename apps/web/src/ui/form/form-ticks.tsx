import { clsx } from 'clsx';
import type { FieldValues } from 'react-hook-form';
import type { Choice } from '../fields/select-field.js';
import { Tick, Ticks } from '../fields/ticks.js';
import { ui } from '../styles.js';
import { useFormField } from './use-form-field.js';
import type { FormFieldProps } from './use-form-field.js';

/** One thing that is so or not. */
export function FormTick<Values extends FieldValues>(props: FormFieldProps<Values, boolean>) {
  const { value, set, face } = useFormField(props);
  return (
    <div className={face.whole ? clsx(ui.field, ui.whole) : ui.field}>
      <Tick label={face.label} checked={value} onChange={set} />
      {face.wrong && <span className={ui.wrong}>{face.wrong}</span>}
      {face.help && <span className={ui.help}>{face.help}</span>}
    </div>
  );
}

/** Any number of a few choices. */
export function FormTicks<Values extends FieldValues>({
  choices,
  ...props
}: FormFieldProps<Values, string[]> & { choices: readonly Choice[] }) {
  const { value, set, face } = useFormField(props);
  return <Ticks {...face} values={value} onChange={set} choices={choices} />;
}
