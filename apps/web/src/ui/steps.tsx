import { clsx } from 'clsx';
import { ui } from './styles.js';
import styles from './steps.module.css';
import progress from './progress.module.css';
/** How far something has come, as a scale with a pointer over the present step. */
export function Steps({
  steps,
  at,
  aside,
  label,
}: {
  steps: readonly { key: string; label: string }[];
  at: string;
  aside?: string | null;
  label: string;
}) {
  const here = steps.findIndex((step) => step.key === at);
  return (
    <ol className={clsx(styles.steps, aside && styles.aside)} aria-label={label}>
      {steps.map((step, index) => (
        <li
          key={step.key}
          className={index === here ? styles.here : index < here ? styles.gone : undefined}
          aria-current={index === here ? 'step' : undefined}
        >
          {index === here && aside ? aside : step.label}
        </li>
      ))}
    </ol>
  );
}

/** Progress of long work: ticks along a bar, with the percentage as text. */
export function Progress({ percent, label }: { percent: number; label: string }) {
  return (
    <div
      className={progress.progress}
      role="progressbar"
      aria-label={label}
      aria-valuenow={percent}
      aria-valuemin={0}
      aria-valuemax={100}
    >
      <div className={progress.done} style={{ width: `${percent}%` }} />
      <span className={clsx(progress.percent, ui.fig)}>{Math.round(percent)} %</span>
    </div>
  );
}
