import type { FieldValues } from 'react-hook-form';
import { formatNumber, parseNumber } from '#libs/units/src/index.js';
import { TextField } from '../fields/text-field.js';
import { useFormField } from './use-form-field.js';
import type { FormFieldProps } from './use-form-field.js';

interface Bounds {
  min?: number;
  max?: number;
  unit?: string;
}

/** A figure as a person writes it; the form holds the text, {@link figureIn} reads it. The unit stands in the label. */
export function FormNumber<Values extends FieldValues>({
  min,
  max,
  unit,
  ...props
}: FormFieldProps<Values, string> & Bounds) {
  const { called = props.label, required } = props;
  const label = unit ? `${props.label}, ${unit}` : props.label;
  const rule = (text: string) => {
    if (!text.trim()) return required ? `${called} is needed.` : undefined;
    return againstFigure(text, called, { min, max, unit });
  };
  const { value, set, blur, face } = useFormField({ ...props, label, called }, rule);
  return <TextField {...face} inputMode="decimal" value={value} onChange={set} onBlur={blur} />;
}

/** The figure that a text says; undefined for none. */
export function figureIn(text: string): number | undefined {
  const read = parseNumber(text);
  return 'reason' in read ? undefined : read.value;
}

function againstFigure(text: string, called: string, { min = -Infinity, max = Infinity, unit = '' }: Bounds) {
  const read = parseNumber(text);
  if ('reason' in read) return read.reason;
  if (read.value >= min && read.value <= max) return undefined;
  const shown = (value: number) => `${formatNumber(value)}${unit ? ` ${unit}` : ''}`;
  if (max === Infinity) return `${called} may be ${shown(min)} at least.`;
  if (min === -Infinity) return `${called} may be ${shown(max)} at most.`;
  return `${called} may be ${formatNumber(min)} to ${shown(max)}.`;
}
