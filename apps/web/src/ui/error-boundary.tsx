import { Component } from 'react';
import type { ErrorInfo, ReactNode } from 'react';
import { ui } from './styles.js';
import styles from './error-boundary.module.css';

interface Props {
  /** What is inside, at the start of a sentence: `This screen`. */
  what: string;
  /** Address of what is inside: at another one, it is tried again. */
  path: string;
  children: ReactNode;
}

interface State {
  failed: { error: Error; path: string; at: Date } | null;
}

/** Shows words in place of what crashed inside it, so that the page around it goes on. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { failed: null };

  static getDerivedStateFromError(thrown: unknown): State {
    const error = thrown instanceof Error ? thrown : new Error(String(thrown));
    return { failed: { error, path: location.pathname, at: new Date() } };
  }

  override componentDidCatch(error: Error, { componentStack }: ErrorInfo): void {
    console.error(error, componentStack);
  }

  override componentDidUpdate(before: Props): void {
    if (this.state.failed && before.path !== this.props.path) this.setState({ failed: null });
  }

  override render(): ReactNode {
    const { failed } = this.state;
    return failed ? <Failed what={this.props.what} {...failed} /> : this.props.children;
  }
}

function Failed({ what, error, path, at }: { what: string } & NonNullable<State['failed']>) {
  return (
    <div className={ui.stack} role="alert">
      <h1>{what} stopped working</h1>
      <p>
        That is a fault of Loadtrain, not of what you did. What was already saved is safe; what you were typing here may
        be lost. The other screens go on.
      </p>
      <div className={ui.row}>
        <button type="button" className={ui.buttonMain} onClick={() => location.reload()}>
          Reload this page
        </button>
        <a className={ui.button} href="/">
          Go to the start page
        </a>
      </div>
      <p>If it happens again, send these lines to the person who looks after Loadtrain:</p>
      <pre className={styles.report}>{`${at.toISOString()}\n${path}\n${error.name}: ${error.message}`}</pre>
    </div>
  );
}
