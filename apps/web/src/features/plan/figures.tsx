import { clsx } from 'clsx';
import type { PlanComparison, PlanFigures } from '#libs/contract/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { span } from '../../ui/moments.js';
import { ui } from '../../ui/styles.js';
import styles from './figures.module.css';

const LINES: { key: keyof PlanFigures; label: string; unit: string; lessIsBetter: boolean }[] = [
  { key: 'weightedLatenessHours', label: 'Weighted lateness', unit: 'h', lessIsBetter: true },
  { key: 'lateJobs', label: 'Late jobs', unit: '', lessIsBetter: true },
  { key: 'changeoverHours', label: 'Changeover', unit: 'h', lessIsBetter: true },
  { key: 'movedHours', label: 'Moved', unit: 'h', lessIsBetter: true },
  { key: 'jobs', label: 'Jobs placed', unit: '', lessIsBetter: false },
];

/** A trial plan against one made in the same way without its changes: what differs comes from them. */
export function Comparison({ comparison }: { comparison: PlanComparison }) {
  const { before, after, later, earlier, movedFrame } = comparison;
  return (
    <section className={ui.stack}>
      <h2>Against a plan without these changes</h2>
      <p className={clsx(ui.small, ui.soft)}>
        Both are made anew from now on, so the left figures may differ from those of the published plan.
      </p>
      <div className={styles.compare}>
        {LINES.map(({ key, label, unit, lessIsBetter }) => {
          const change = after[key] - before[key];
          const better = lessIsBetter ? change < 0 : change > 0;
          return (
            <div key={key}>
              <div className={clsx(ui.small, ui.soft)}>{label}</div>
              <div className={ui.fig}>
                {formatNumber(before[key], 3)} → <strong>{formatNumber(after[key], 3)}</strong> {unit}
              </div>
              <div
                className={
                  change === 0 ? clsx(ui.small, ui.soft) : better ? clsx(ui.small, ui.fit) : clsx(ui.small, ui.act)
                }
              >
                {change === 0
                  ? 'the same'
                  : `${better ? 'better' : 'worse'} by ${formatNumber(Math.abs(change), 3)} ${unit}`}
              </div>
            </div>
          );
        })}
      </div>
      <div className={ui.split}>
        <Shifted title="Later" jobs={later} />
        <Shifted title="Earlier" jobs={earlier} />
      </div>
      {movedFrame.length > 0 && (
        <p className={ui.small}>
          On another frame:{' '}
          {movedFrame.map(({ jobId, jobReference, from, to }) => (
            <span key={jobId}>
              <span className={ui.fig}>{jobReference}</span> {from} → {to};{' '}
            </span>
          ))}
        </p>
      )}
    </section>
  );
}

function Shifted({ title, jobs }: { title: string; jobs: PlanComparison['later'] }) {
  return (
    <div>
      <h3>{title}</h3>
      {jobs.length === 0 ? (
        <p className={ui.soft}>none</p>
      ) : (
        <ul>
          {jobs.map(({ jobId, jobReference, title: name, hours }) => (
            <li key={jobId}>
              <span className={ui.fig}>{jobReference}</span> {name}, {span(hours * 60)}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
