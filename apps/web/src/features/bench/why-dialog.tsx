import { clsx } from 'clsx';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { ui } from '../../ui/styles.js';
import styles from './bench.module.css';

/** Asks for the reason of something that the record must explain. */
export function WhyDialog({
  title,
  explain,
  button,
  onWhy,
  onClose,
  usual = [],
  children,
}: {
  title: string;
  explain: string;
  button: string;
  onWhy: (why: string) => Promise<unknown>;
  onClose: () => void;
  usual?: readonly string[];
  children?: ReactNode;
}) {
  const [why, setWhy] = useState('');
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  async function go() {
    setBusy(true);
    try {
      await onWhy(why);
      onClose();
    } catch (refused) {
      setError(refused as Error);
      setBusy(false);
    }
  }
  return (
    <Dialog title={title} onClose={onClose}>
      <div className={clsx(ui.stack, styles.bench)} style={{ minHeight: 0 }}>
        <p>{explain}</p>
        {children}
        {usual.length > 0 && (
          <div className={ui.row}>
            {usual.map((each) => (
              <button key={each} type="button" className={ui.button} onClick={() => setWhy(each)}>
                {each}
              </button>
            ))}
          </div>
        )}
        <TextField label="Reason" required value={why} onChange={setWhy} />
        <ErrorMessage error={error} />
        <button
          type="button"
          className={clsx(ui.buttonMain, styles.go)}
          disabled={!why.trim() || busy}
          onClick={() => void go()}
        >
          {button}
        </button>
      </div>
    </Dialog>
  );
}
