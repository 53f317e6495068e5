import type { FieldValues } from 'react-hook-form';
import type { Quantity } from '#libs/units/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import { QuantityField } from '../fields/quantity-field.js';
import type { Typed } from '../fields/quantity-field.js';
import { useFormField } from './use-form-field.js';
import type { FormFieldProps } from './use-form-field.js';

/** A figure with its unit, both as typed. */
export function FormQuantity<Values extends FieldValues>({
  quantity,
  ...props
}: FormFieldProps<Values, Typed> & { quantity?: Quantity }) {
  const { called = props.label, required } = props;
  const { value, set, blur, face } = useFormField(props, (typed: Typed) => {
    if (!typed.value.trim()) return required ? `${called} is needed.` : undefined;
    const read = parseNumber(typed.value);
    return 'reason' in read ? read.reason : undefined;
  });
  return <QuantityField {...face} quantity={quantity} value={value} onChange={set} onBlur={blur} />;
}
