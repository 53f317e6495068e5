import { clsx } from 'clsx';
import type { JobView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { ui } from '../../ui/styles.js';
import { CheckEntry } from './check-entry.js';
import styles from './bench.module.css';

/** The checks before the first specimen: the open ones one after another, what is done above. */
export function CheckList({ job }: { job: JobView }) {
  const { clock } = useMoments();
  const now = job.checks.find(({ done, kind }) => !done && kind !== 'auto');
  return (
    <ol className={styles.checks}>
      {job.checks.map((check) => (
        <li key={check.key} className={check === now ? styles.now : undefined}>
          <div className={styles.line}>
            <span
              className={check.done ? ui.fit : check.problem ? ui.act : ui.soft}
              role="img"
              aria-label={check.done ? 'done' : check.problem ? 'in the way' : 'open'}
            >
              {check.done ? '✓' : check.problem ? '▲' : '○'}
            </span>
            <span>
              <strong>{check.label}</strong>
              {!check.required && <span className={ui.soft}> where it applies</span>}
              <br />
              <span className={ui.small}>{check.problem ?? check.detail}</span>
            </span>
            <span className={clsx(ui.small, ui.soft)}>
              {check.doneAt && `${clock(check.doneAt)}${check.by ? ` ${check.by.name}` : ''}`}
            </span>
          </div>
          {check === now && <CheckEntry key={check.key} job={job} check={check} />}
        </li>
      ))}
    </ol>
  );
}
