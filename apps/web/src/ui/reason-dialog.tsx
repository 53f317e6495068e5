import type { ReactNode } from 'react';
import { Dialog } from './dialog.js';
import { FormFrame, SubmitButton } from './form/form-frame.js';
import { FormText } from './form/form-text.js';
import { useLabForm } from './form/use-lab-form.js';
import { ui } from './styles.js';

interface Props {
  title: string;
  explain: ReactNode;
  /** What the button does, in words. */
  button: string;
  sharp?: boolean;
  /** Whether the change can also be made without a reason. */
  optional?: boolean;
  onWhy: (why: string) => Promise<unknown>;
  onClose: () => void;
}

/** Asks for the reason of a change before it is made, and closes once it is. */
export function ReasonDialog({ title, explain, button, sharp, optional = false, onWhy, onClose }: Props) {
  const form = useLabForm({ initial: { why: '' }, send: ({ why }) => onWhy(why).then(onClose) });
  return (
    <Dialog title={title} onClose={onClose}>
      <FormFrame form={form}>
        <p>{explain}</p>
        <FormText form={form} name="why" label="Why" required={!optional} called="The reason" rows={2} />
        <div>
          <SubmitButton form={form} className={sharp ? ui.buttonSharp : ui.buttonMain}>
            {button}
          </SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}
