import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import { useLiveEvents } from '../../api-client/live-events.js';
import { Chain } from './chain.js';
import { ui } from '../../ui/styles.js';
import styles from './shell.module.css';

/** The chain at the left, the sheet beside it. */
export function Shell({ children }: { children: ReactNode }) {
  const connected = useLiveEvents();
  return (
    <div className={styles.shell}>
      <a className={clsx(ui.button, styles.skip)} href="#sheet">
        Skip to the sheet
      </a>
      <Chain connected={connected} />
      <main id="sheet" tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
