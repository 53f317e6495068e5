import type { ReactNode } from 'react';

/** Something is on its way. */
export function Waiting({ what }: { what: string }) {
  return (
    <div className="face" role="status">
      <span>Fetching {what} …</span>
      <span className="waiting-line" aria-hidden="true" />
    </div>
  );
}

/** Something could not be fetched: why, and a way to try again. */
export function Trouble({ error, onRetry, what }: { error: Error | null; onRetry?: () => void; what?: string }) {
  return (
    <div className="face note act" role="alert">
      <strong>{what ? `${what} could not be fetched.` : 'That did not work.'}</strong>
      <span>{error?.message ?? 'The reason is not known.'}</span>
      {onRetry && (
        <button type="button" className="button" onClick={onRetry}>
          Try again
        </button>
      )}
    </div>
  );
}

/** Nothing is there: what that means and what to do next. */
export function Empty({ children, action }: { children: ReactNode; action?: ReactNode }) {
  return (
    <div className="face">
      <svg width="120" height="28" viewBox="0 0 120 28" aria-hidden="true" className="soft">
        <path d="M4 4v20M116 4v20M4 14h112" stroke="currentColor" strokeDasharray="10 4 2 4" fill="none" />
      </svg>
      <p>{children}</p>
      {action}
    </div>
  );
}

interface Fetch<Value> {
  state: 'waiting' | 'failed' | 'ready';
  value: Value | undefined;
  error: Error | null;
  retry: () => void;
}

/** The first three faces of a fetch; with a value, what `children` makes of it. `empty` is asked first. */
export function Fetched<Value>({
  of,
  what,
  empty,
  children,
}: {
  of: Fetch<Value>;
  /** What is fetched, in the middle of a sentence: `the items`. */
  what: string;
  empty?: (value: Value) => ReactNode;
  children: (value: Value) => ReactNode;
}) {
  if (of.value === undefined) {
    if (of.state === 'failed') return <Trouble error={of.error} onRetry={of.retry} what={capital(what)} />;
    return <Waiting what={what} />;
  }
  return <>{empty?.(of.value) || children(of.value)}</>;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What a refused or unanswered act says; nothing when there is none. */
export function Refusal({ error }: { error: Error | null | undefined }) {
  if (!error) return null;
  return (
    <p className="note act" role="alert">
      {error.message}
    </p>
  );
}
