import type { ReactNode } from 'react';
import type { FieldValues } from 'react-hook-form';
import { ui } from '../styles.js';
import type { LabForm } from './use-lab-form.js';

/** The form on the sheet; what speaks against it as a whole stands at its head. */
export function FormFrame<Values extends FieldValues>({
  form,
  className = ui.stack,
  label,
  sentByEnter = true,
  children,
}: {
  form: LabForm<Values>;
  className?: string;
  label?: string;
  /** False for long forms, which a hasty Enter in one of many fields must not send. */
  sentByEnter?: boolean;
  children: ReactNode;
}) {
  return (
    <form
      id={form.id}
      className={className}
      aria-label={label}
      noValidate
      onSubmit={form.submit}
      onKeyDown={(event) => {
        if (!sentByEnter && event.key === 'Enter' && event.target instanceof HTMLInputElement) event.preventDefault();
      }}
    >
      {form.error && (
        <p className={ui.noteAct} role="alert" tabIndex={-1}>
          {form.error.message}
        </p>
      )}
      {children}
    </form>
  );
}

/**
 * Sends a form, also from outside of it.
 *
 * @param value tells the form which of several buttons was pressed
 */
export function SubmitButton<Values extends FieldValues>({
  form,
  value,
  className = ui.buttonMain,
  disabled = false,
  children,
}: {
  form: LabForm<Values>;
  value?: string;
  className?: string;
  disabled?: boolean;
  children: ReactNode;
}) {
  return (
    <button type="submit" form={form.id} value={value} className={className} disabled={disabled || form.pending}>
      {children}
    </button>
  );
}
