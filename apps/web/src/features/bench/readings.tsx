import { clsx } from 'clsx';
import { useId } from 'react';
import { useWatch } from 'react-hook-form';
import type { JobView } from '#libs/contract/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { useFormField } from '../../ui/form/use-form-field.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { figure, readingKey } from './typed-figures.js';
import type { TypedFigures } from './typed-figures.js';
import styles from './bench.module.css';

type Need = JobView['dimensionsNeeded'][number];

interface Props {
  form: LabForm<TypedFigures>;
  need: Need;
}

/** Share from which a mean off its nominal figure, or readings off each other, are worth a second look; common practice, no source. */
const FAR_OFF = 0.1;

/** The readings of one dimension, with their mean. */
export function Readings({ form, need }: Props) {
  return (
    <fieldset className={ui.field}>
      <legend>
        {need.label}, {need.unit}{' '}
        {need.nominal !== null && <span className={ui.soft}>nominal {formatNumber(need.nominal)}</span>}
      </legend>
      <div className={styles.readingRow}>
        {Array.from({ length: need.readings }, (_, at) => (
          <ReadingInput key={at} form={form} need={need} at={at} />
        ))}
        <Mean form={form} need={need} />
      </div>
    </fieldset>
  );
}

function ReadingInput({ form, need, at }: Props & { at: number }) {
  const id = useId();
  const label = `${need.label}, reading ${at + 1}`;
  const { value, set, blur, face } = useFormField<TypedFigures, string>({
    form,
    name: `readings.${readingKey(need.key, at)}`,
    label,
  });
  return (
    <>
      <input
        aria-label={label}
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={face.wrong ? true : undefined}
        aria-describedby={face.wrong ? id : undefined}
        value={value}
        onBlur={blur}
        onChange={(event) => set(event.target.value)}
      />
      {face.wrong && (
        <span id={id} className={ui.wrong}>
          {face.wrong}
        </span>
      )}
    </>
  );
}

function Mean({ form, need }: Props) {
  const readings = useWatch({ control: form.control, name: 'readings' });
  const texts = Array.from({ length: need.readings }, (_, at) => readings[readingKey(need.key, at)] ?? '');
  const read = texts.flatMap((text) => figure(text, { near: need.nominal }));
  if (read.length === 0) return null;
  const mean = read.reduce((sum, value) => sum + value, 0) / read.length;
  const isOff = need.nominal !== null && Math.abs(mean / need.nominal - 1) > FAR_OFF;
  const areApart = mean !== 0 && (Math.max(...read) - Math.min(...read)) / mean > FAR_OFF;
  return (
    <span className={isOff || areApart ? clsx(ui.fig, ui.act) : ui.fig}>
      {(isOff || areApart) && '▲ '}mean {formatNumber(mean, 5)}
      {isOff && ', far from nominal'}
      {areApart && ', readings far apart'}
    </span>
  );
}
