import { clsx } from 'clsx';
import { useEffect, useRef, useState } from 'react';
import type { RefObject } from 'react';
import { ui } from '../../ui/styles.js';
import styles from './bench.module.css';

/**
 * Takes a tag from a barcode reader that types and ends with Enter, or from a person. Keys typed anywhere land here. A tag that
 * is read while the one before is still being confirmed waits its turn, unless that one is refused: then somebody has to look.
 */
export function ScanField({
  label,
  onTag,
  busy,
  wrong,
}: {
  label: string;
  onTag: (tag: string) => void;
  busy: boolean;
  wrong: string | null;
}) {
  const [text, setText] = useState('');
  const [queue, setQueue] = useState<string[]>([]);
  const ref = useRef<HTMLInputElement>(null);
  useKeysFromAnywhere(ref);
  useEffect(() => {
    if (busy || queue.length === 0) return;
    setQueue(wrong ? [] : queue.slice(1));
    if (!wrong) onTag(queue[0]!);
  }, [busy, wrong, queue, onTag]);
  return (
    <form
      className={ui.field}
      onSubmit={(event) => {
        event.preventDefault();
        const tag = text.trim();
        if (!tag) return;
        setText('');
        if (busy) setQueue([...queue, tag]);
        else onTag(tag);
      }}
    >
      <label htmlFor="scan">{label}</label>
      <div className={ui.row}>
        <input
          id="scan"
          ref={ref}
          className={clsx(styles.scan, ui.grow)}
          value={text}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          aria-invalid={wrong ? true : undefined}
          aria-describedby={wrong ? 'scan-wrong' : undefined}
          onChange={(event) => setText(event.target.value)}
        />
        <button type="submit" className={ui.button} disabled={!text.trim()}>
          Confirm
        </button>
      </div>
      {wrong && (
        <span className={ui.wrong} id="scan-wrong" role="alert">
          {wrong}
        </span>
      )}
    </form>
  );
}

/** Keys that are typed while no field has the focus land in this one. */
function useKeysFromAnywhere(ref: RefObject<HTMLInputElement | null>) {
  useEffect(() => {
    ref.current?.focus();
    const catchKeys = (event: KeyboardEvent) => {
      const on = document.activeElement;
      if (event.key.length !== 1 || event.ctrlKey || event.metaKey || event.altKey) return;
      if (
        on instanceof HTMLInputElement ||
        on instanceof HTMLTextAreaElement ||
        on instanceof HTMLSelectElement ||
        document.querySelector('dialog[open]')
      )
        return;
      ref.current?.focus();
    };
    addEventListener('keydown', catchKeys);
    return () => removeEventListener('keydown', catchKeys);
  }, [ref]);
}
