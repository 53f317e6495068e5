import type { ReactNode } from 'react';
import { useLiveEvents } from '../../api-client/live-events.js';
import { Chain } from './chain.js';

/** The chain at the left, the sheet beside it. */
export function Shell({ children }: { children: ReactNode }) {
  const connected = useLiveEvents();
  return (
    <div className="shell">
      <a className="skip button" href="#sheet">
        Skip to the sheet
      </a>
      <Chain connected={connected} />
      <main id="sheet" tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
