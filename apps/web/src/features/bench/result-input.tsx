import { useId } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { useFormField } from '../../ui/form/use-form-field.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import type { TypedFigures } from './typed-figures.js';
import styles from './bench.module.css';

/** One result that is typed: its name on the left, the figure on the right. */
export function ResultInput({
  form,
  need: { key, label, unit },
}: {
  form: LabForm<TypedFigures>;
  need: JobView['resultsNeeded'][number];
}) {
  const id = useId();
  const { value, set, blur, face } = useFormField<TypedFigures, string>({ form, name: `results.${key}`, label });
  return (
    <div className={styles.resultRow}>
      <label htmlFor={id}>
        {label}
        {unit && `, ${unit}`}
      </label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={face.wrong ? true : undefined}
        aria-describedby={face.wrong ? `${id}-wrong` : undefined}
        value={value}
        onBlur={blur}
        onChange={(event) => set(event.target.value)}
      />
      {face.wrong && (
        <span id={`${id}-wrong`} className={ui.wrong}>
          {face.wrong}
        </span>
      )}
    </div>
  );
}
