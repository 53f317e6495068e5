import { useEffect, useRef } from 'react';
import type { FieldValues } from 'react-hook-form';
import { Field } from '../fields/field.js';
import { useFormField } from './use-form-field.js';
import type { FormFieldProps } from './use-form-field.js';

/**
 * A file from the person's device; null while none is chosen.
 *
 * @param accept the kinds that are offered, as an `input` of HTML takes them
 * @param needed what is said when none is chosen
 */
export function FormFile<Values extends FieldValues>({
  accept,
  needed,
  ...props
}: FormFieldProps<Values, File | null> & { accept: string; needed: string }) {
  const { value, set, blur, face } = useFormField(props, (file: File | null) => (file ? undefined : needed));
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (value === null && input.current) input.current.value = ''; // the browser keeps the name of a file that is done with
  }, [value]);
  return (
    <Field {...face}>
      {(ids) => (
        <input
          {...ids}
          ref={input}
          type="file"
          accept={accept}
          onBlur={blur}
          onChange={(event) => set(event.target.files?.[0] ?? null)}
        />
      )}
    </Field>
  );
}
