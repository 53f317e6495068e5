import { useEffect } from 'react';
import { useController } from 'react-hook-form';
import type { FieldPathByValue, FieldValues } from 'react-hook-form';
import type { FieldFace } from '../fields/field.js';
import type { LabForm } from './use-lab-form.js';

/** A field of a form that holds a value of one type: which form, which field, and how it is called. */
export interface FormFieldProps<Values extends FieldValues, Value> extends Omit<FieldFace, 'wrong'> {
  form: LabForm<Values>;
  name: FieldPathByValue<Values, Value>;
  /** The name at the head of a sentence about it, where the label does not read well there: `The title`. */
  called?: string;
  /** A remark that is known without sending, such as one of a preview. What is refused goes before it. */
  remark?: string | undefined;
  /** What follows in the form when a person changes the value. */
  onEdit?: (value: Value) => void;
}

/** Why a value may not be sent; undefined when it may. */
export type Rule<Value> = (value: Value) => string | undefined;

export interface FormField<Value> {
  value: Value;
  set: (value: Value) => void;
  blur: () => void;
  /** Label, help and what is wrong, as the fields of `ui/fields` take them. */
  face: FieldFace;
}

/** Ties an input to a field of a form. */
export function useFormField<Values extends FieldValues, Value>(
  props: FormFieldProps<Values, Value>,
  rule?: Rule<Value>,
): FormField<Value> {
  const { form, name, label, called = label, remark, onEdit, help, whole, required } = props;
  const { enter } = form;
  const { field, fieldState } = useController({
    control: form.control,
    name,
    rules: { validate: (value: Value) => rule?.(value) ?? true },
  });
  useEffect(() => enter(name, called), [enter, name, called]);
  return {
    value: field.value,
    set: (value) => {
      field.onChange(value);
      onEdit?.(value);
    },
    blur: field.onBlur,
    face: { label, help, wrong: fieldState.error?.message ?? remark, whole, required },
  };
}
