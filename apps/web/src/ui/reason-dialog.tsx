import { useState } from 'react';
import type { ReactNode } from 'react';
import { Dialog } from './dialog.js';
import { ErrorMessage } from './fetch-states.js';
import { TextField } from './fields/text-field.js';
import { ui } from './styles.js';

interface Props {
  title: string;
  explain: ReactNode;
  /** What the button does, in words. */
  button: string;
  sharp?: boolean;
  busy: boolean;
  error: Error | null;
  onWhy: (why: string) => void;
  onClose: () => void;
}

/** Asks for the reason of an act before it is done. */
export function ReasonDialog({ title, explain, button, sharp, busy, error, onWhy, onClose }: Props) {
  const [why, setWhy] = useState('');
  return (
    <Dialog title={title} onClose={onClose}>
      <p>{explain}</p>
      <TextField label="Why" required rows={2} value={why} onChange={setWhy} />
      <ErrorMessage error={error} />
      <div>
        <button
          type="button"
          className={sharp ? ui.buttonSharp : ui.buttonMain}
          disabled={!why.trim() || busy}
          onClick={() => onWhy(why)}
        >
          {button}
        </button>
      </div>
    </Dialog>
  );
}
