import { clsx } from 'clsx';
import { useEffect } from 'react';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { ui } from './styles.js';
import styles from './title-block.module.css';

/** The head of every screen, laid out like the title block of a drawing. */
export function TitleBlock({
  title,
  back,
  cells = [],
  children,
}: {
  title: string;
  back?: { to: string; label: string };
  cells?: readonly (readonly [caption: string, value: ReactNode])[];
  children?: ReactNode;
}) {
  useEffect(() => {
    document.title = `${title} · Loadtrain`;
  }, [title]);
  return (
    <header className={styles.titleBlock}>
      <div className={styles.title}>
        {back && (
          <Link className={clsx(styles.back, ui.soft)} href={back.to}>
            {back.label}
          </Link>
        )}
        <h1>{title}</h1>
      </div>
      {cells.map(([caption, value]) => (
        <div className={styles.cell} key={caption}>
          <span className={styles.caption}>{caption}</span>
          <span>{value}</span>
        </div>
      ))}
      {children && <div className={clsx(styles.acts, ui.noPrint)}>{children}</div>}
    </header>
  );
}
