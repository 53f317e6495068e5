import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import { Dialog } from '../../ui/dialog.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import styles from './bench.module.css';

interface Props {
  title: string;
  explain: string;
  button: string;
  onWhy: (why: string) => Promise<unknown>;
  onClose: () => void;
  /** Reasons that are often given, each on a button. */
  usual?: readonly string[];
  children?: ReactNode;
}

/** Asks for the reason of something that the record must explain. */
export function WhyDialog({ title, explain, button, onWhy, onClose, usual = [], children }: Props) {
  const form = useLabForm({ initial: { why: '' }, send: ({ why }) => onWhy(why).then(onClose) });
  return (
    <Dialog title={title} onClose={onClose}>
      <FormFrame form={form} className={clsx(ui.stack, styles.bench, styles.inDialog)}>
        <p>{explain}</p>
        {children}
        {usual.length > 0 && (
          <div className={ui.row}>
            {usual.map((each) => (
              <button
                key={each}
                type="button"
                className={ui.button}
                onClick={() => form.hook.setValue('why', each, { shouldDirty: true, shouldValidate: true })}
              >
                {each}
              </button>
            ))}
          </div>
        )}
        <FormText form={form} name="why" label="Reason" needed="Say why: the record keeps it." />
        <SubmitButton form={form} className={clsx(ui.buttonMain, styles.go)}>
          {button}
        </SubmitButton>
      </FormFrame>
    </Dialog>
  );
}
