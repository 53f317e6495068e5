import type { ComponentProps } from 'react';
import type { FieldValues } from 'react-hook-form';
import { TextField } from '../fields/text-field.js';
import { useFormField } from './use-form-field.js';
import type { FormFieldProps } from './use-form-field.js';

type Input = Pick<
  ComponentProps<typeof TextField>,
  'type' | 'rows' | 'placeholder' | 'autoFocus' | 'autoComplete' | 'list'
>;

/**
 * Text, a date or a time; with `rows`, several lines.
 *
 * @param needed what is said when nothing is typed; without it the label says so
 */
export function FormText<Values extends FieldValues>({
  needed,
  type,
  rows,
  placeholder,
  autoFocus,
  autoComplete,
  list,
  ...props
}: FormFieldProps<Values, string> & Input & { needed?: string }) {
  const { called = props.label, required } = props;
  const { value, set, blur, face } = useFormField(props, (text: string) =>
    (required || needed) && !text.trim() ? (needed ?? `${called} is needed.`) : undefined,
  );
  const input = { type, rows, placeholder, autoFocus, autoComplete, list };
  return <TextField {...face} {...input} value={value} onChange={set} onBlur={blur} />;
}
