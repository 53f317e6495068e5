import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import { ui } from './styles.js';
import styles from './fetch-states.module.css';

/** Something is being fetched. */
export function Loading({ what }: { what: string }) {
  return (
    <div className={styles.state} role="status">
      <span>Fetching {what} …</span>
      <span className={styles.loadingLine} aria-hidden="true" />
    </div>
  );
}

/** Something could not be fetched: why, and a way to try again where the error does not say that it is `lasting`. */
export function FetchFailed({ error, onRetry, what }: { error: Error | null; onRetry?: () => void; what?: string }) {
  const lasting = (error as { lasting?: unknown } | null)?.lasting === true;
  return (
    <div className={clsx(ui.noteAct, styles.state, styles.failed)} role="alert">
      <strong>{what ? `${what} could not be fetched.` : 'That did not work.'}</strong>
      <span>{error?.message ?? 'The reason is not known.'}</span>
      {onRetry && !lasting && (
        <button type="button" className={ui.button} onClick={onRetry}>
          Try again
        </button>
      )}
    </div>
  );
}

/** Nothing is there: what that means and what to do next. */
export function Empty({ children, action }: { children: ReactNode; action?: ReactNode }) {
  return (
    <div className={styles.state}>
      <svg width="120" height="28" viewBox="0 0 120 28" aria-hidden="true" className={ui.soft}>
        <path d="M4 4v20M116 4v20M4 14h112" stroke="currentColor" strokeDasharray="10 4 2 4" fill="none" />
      </svg>
      <p>{children}</p>
      {action}
    </div>
  );
}

interface FetchState<Value> {
  state: 'loading' | 'failed' | 'ready';
  value: Value | undefined;
  error: Error | null;
  retry: () => void;
}

/** Shows a fetch that loads or has failed; with a value, what `empty` or else `children` makes of it. */
export function FetchStates<Value>({
  of,
  what,
  empty,
  children,
}: {
  of: FetchState<Value>;
  /** What is fetched, in the middle of a sentence: `the items`. */
  what: string;
  empty?: (value: Value) => ReactNode;
  children: (value: Value) => ReactNode;
}) {
  if (of.value === undefined) {
    if (of.state === 'failed') return <FetchFailed error={of.error} onRetry={of.retry} what={capital(what)} />;
    return <Loading what={what} />;
  }
  return <>{empty?.(of.value) || children(of.value)}</>;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Why a change was refused or not answered; nothing without an error. */
export function ErrorMessage({ error }: { error: Error | null | undefined }) {
  if (!error) return null;
  return (
    <p className={ui.noteAct} role="alert">
      {error.message}
    </p>
  );
}
