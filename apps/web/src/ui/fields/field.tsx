import { clsx } from 'clsx';
import { useId } from 'react';
import type { ReactNode } from 'react';
import { ui } from '../styles.js';
import styles from './fields.module.css';

/** What every field says of itself, whatever its input is. */
export interface FieldFace {
  label: string;
  help?: ReactNode;
  wrong?: string | undefined;
  required?: boolean;
  whole?: boolean;
}

/** Label, input, help and refusal of one field, tied together for screen readers. */
export function Field({
  label,
  help,
  wrong,
  required,
  whole,
  children,
}: FieldFace & { children: (ids: { id: string; 'aria-describedby'?: string; 'aria-invalid'?: true }) => ReactNode }) {
  const id = useId();
  const described = [help && `${id}-help`, wrong && `${id}-wrong`].filter(Boolean).join(' ');
  return (
    <div className={whole ? clsx(styles.field, styles.whole) : styles.field}>
      <label htmlFor={id}>
        {label}
        {required === false && <span className={ui.soft}> (optional)</span>}
      </label>
      <div className={styles.body}>
        {children({
          id,
          ...(described ? { 'aria-describedby': described } : {}),
          ...(wrong ? { 'aria-invalid': true as const } : {}),
        })}
        {wrong && (
          <span className={styles.wrong} id={`${id}-wrong`}>
            {wrong}
          </span>
        )}
        {help && (
          <span className={styles.help} id={`${id}-help`}>
            {help}
          </span>
        )}
      </div>
    </div>
  );
}
