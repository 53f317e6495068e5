import { clsx } from 'clsx';
import styles from './navigation.module.css';
export type ChainPart = 'adapter' | 'cell' | 'specimen' | 'grip' | 'platen';

/** Outlines of the parts, drawn between a coupling at (24, 0) and one at (24, 56). */
const OUTLINES: Record<ChainPart, string> = {
  adapter: 'M24 0v8M16 8h16v10H16zM19 18h10v20H19zM19 23l10 -3M19 28l10 -3M19 33l10 -3M16 38h16v10H16zM24 48v8',
  cell: 'M24 0v8M10 8h28v40H10zM10 20h20M38 36H18M24 48v8M30 20a4 4 0 0 1 0 6M18 36a4 4 0 0 1 0 -6',
  specimen: 'M24 0v4M16 4h16v12c0 4 -4 5 -4 9v6c0 4 4 5 4 9v12H16V40c0 -4 4 -5 4 -9v-6c0 -4 -4 -5 -4 -9zM24 52v4',
  grip: 'M24 0v6M12 6h24v12l-6 28H18l-6 -28zM21 18v28M27 18v28M24 46v10M21 22l-3 2M21 28l-3 2M21 34l-3 2M27 22l3 2M27 28l3 2M27 34l3 2',
  platen: 'M24 0v14M15 14h18v10H15zM6 24h36v10H6zM15 34h18v8H15zM24 42v14M6 29h36',
};

/** Jaws that close on the part of the current desk from both sides. */
const JAWS = 'M0 14l9 5v18l-9 5zM48 14l-9 5v18l9 5z';
const TEETH = 'M3 18v20M6 19v18M45 18v20M42 19v18';

/** One link of the navigation chain. */
export function ChainDrawing({ part, clamped }: { part: ChainPart; clamped: boolean }) {
  return (
    <svg className={styles.chainPart} width="48" height="56" viewBox="0 0 48 56" aria-hidden="true">
      <path d="M24 0v56" className={styles.centreLine} />
      <path d={OUTLINES[part]} className={clamped ? clsx(styles.outline, styles.heavy) : styles.outline} />
      {clamped && (
        <>
          <path d={JAWS} className={styles.jaw} />
          <path d={TEETH} className={styles.teeth} />
        </>
      )}
    </svg>
  );
}

/** The pin joint between two links. */
export function Coupling() {
  return (
    <svg className={styles.chainCoupling} width="48" height="18" viewBox="0 0 48 18" aria-hidden="true">
      <path d="M24 0v18" className={styles.centreLine} />
      <path d="M19 0v18M29 0v18" className={styles.outline} />
      <circle cx="24" cy="9" r="4.5" className={styles.pin} />
      <path d="M21 9h6M24 6v6" className={styles.outline} />
    </svg>
  );
}
