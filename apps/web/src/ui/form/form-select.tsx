import type { FieldValues } from 'react-hook-form';
import { SelectField } from '../fields/select-field.js';
import type { Choice } from '../fields/select-field.js';
import { useFormField } from './use-form-field.js';
import type { FormFieldProps } from './use-form-field.js';

/**
 * One of several choices.
 *
 * @param none what the empty choice is called; without it there is none
 * @param needed what is said when nothing is chosen
 */
export function FormSelect<Values extends FieldValues>({
  choices,
  none,
  needed,
  ...props
}: FormFieldProps<Values, string> & { choices: readonly Choice[]; none?: string; needed?: string }) {
  const { value, set, face } = useFormField(props, (chosen: string) => (needed && !chosen ? needed : undefined));
  return <SelectField {...face} value={value} onChange={set} choices={choices} none={none} />;
}
