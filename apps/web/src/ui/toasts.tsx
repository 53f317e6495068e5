import { clsx } from 'clsx';
import { createContext, useCallback, useContext, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { ui } from './styles.js';
import styles from './toasts.module.css';

interface Toast {
  id: number;
  text: string;
  undo?: (() => void) | undefined;
}

const ToastContext = createContext<(text: string, undo?: () => void) => void>(() => undefined);

const SHOWN_MS = 9000;

/** Says briefly what was done; with `undo`, offers to take it back. */
export function useToast() {
  return useContext(ToastContext);
}

export function Toasts({ children }: { children: ReactNode }) {
  const [toasts, setToasts] = useState<Toast[]>([]);
  const dismiss = useCallback((id: number) => setToasts((shown) => shown.filter((toast) => toast.id !== id)), []);
  const toast = useMemo(() => {
    let last = 0;
    return (text: string, undo?: () => void) => {
      const id = ++last;
      setToasts((shown) => [...shown.slice(-2), { id, text, undo }]);
      setTimeout(() => dismiss(id), SHOWN_MS);
    };
  }, [dismiss]);
  return (
    <ToastContext.Provider value={toast}>
      {children}
      <div className={styles.toasts} role="status" aria-live="polite">
        {toasts.map((toast) => (
          <div className={styles.toast} key={toast.id}>
            <span>{toast.text}</span>
            {toast.undo && (
              <button
                type="button"
                className={clsx(ui.button, ui.buttonSmall)}
                onClick={() => {
                  toast.undo?.();
                  dismiss(toast.id);
                }}
              >
                Undo
              </button>
            )}
            <button
              type="button"
              className={clsx(ui.button, ui.buttonSmall)}
              aria-label="Dismiss"
              onClick={() => dismiss(toast.id)}
            >
              ×
            </button>
          </div>
        ))}
      </div>
    </ToastContext.Provider>
  );
}
