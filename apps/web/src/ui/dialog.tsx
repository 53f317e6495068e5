import { useEffect, useRef } from 'react';
import type { ReactNode } from 'react';
import { ui } from './styles.js';
import styles from './dialog.module.css';

/** A window over the sheet; Escape and a click beside it close it. */
export function Dialog({
  title,
  onClose,
  children,
  wide,
}: {
  title: string;
  onClose: () => void;
  children: ReactNode;
  wide?: boolean;
}) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    if (dialog && !dialog.open) dialog.showModal();
  }, []);
  return (
    <dialog
      ref={ref}
      className={wide ? styles.wide : styles.dialog}
      aria-label={title}
      onClose={onClose}
      onClick={(event) => event.target === ref.current && onClose()}
    >
      <div className={ui.stack}>
        <div className={ui.rowBetween}>
          <h2>{title}</h2>
          <button type="button" className={ui.buttonBare} onClick={onClose}>
            Close
          </button>
        </div>
        {children}
      </div>
    </dialog>
  );
}
