import { createContext, useCallback, useContext, useMemo, useState } from 'react';
import type { ReactNode } from 'react';

interface Notice {
  id: number;
  text: string;
  undo?: (() => void) | undefined;
}

const Tell = createContext<(text: string, undo?: () => void) => void>(() => undefined);

const SHOWN_MS = 9000;

/** Says briefly what was done; with `undo`, offers to take it back. */
export function useTell() {
  return useContext(Tell);
}

export function Notices({ children }: { children: ReactNode }) {
  const [notices, setNotices] = useState<Notice[]>([]);
  const drop = useCallback((id: number) => setNotices((shown) => shown.filter((notice) => notice.id !== id)), []);
  const tell = useMemo(() => {
    let last = 0;
    return (text: string, undo?: () => void) => {
      const id = ++last;
      setNotices((shown) => [...shown.slice(-2), { id, text, undo }]);
      setTimeout(() => drop(id), SHOWN_MS);
    };
  }, [drop]);
  return (
    <Tell.Provider value={tell}>
      {children}
      <div className="notices" role="status" aria-live="polite">
        {notices.map((notice) => (
          <div className="notice" key={notice.id}>
            <span>{notice.text}</span>
            {notice.undo && (
              <button
                type="button"
                className="button small"
                onClick={() => {
                  notice.undo?.();
                  drop(notice.id);
                }}
              >
                Undo
              </button>
            )}
            <button type="button" className="button small" aria-label="Dismiss" onClick={() => drop(notice.id)}>
              ×
            </button>
          </div>
        ))}
      </div>
    </Tell.Provider>
  );
}
