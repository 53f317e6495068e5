import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { useOutbox } from './sending.js';
import { ui } from '../../ui/styles.js';
import styles from './bench.module.css';

export const BENCH_STEPS = [
  { key: 'setup', label: 'Setup' },
  { key: 'checks', label: 'Checks' },
  { key: 'run', label: 'Run' },
  { key: 'finish', label: 'Finish' },
] as const;
export type BenchStep = (typeof BENCH_STEPS)[number]['key'];

/** One step at the bench: what it is about above, the one thing to do now, and the action that goes on always in view. */
export function BenchFrame({
  job,
  step,
  children,
  bar,
}: {
  job: JobView;
  step: BenchStep;
  children: ReactNode;
  bar: ReactNode;
}) {
  const here = BENCH_STEPS.findIndex(({ key }) => key === step);
  return (
    <div className={styles.bench}>
      <NetworkState />
      <header className={styles.benchHead}>
        <div>
          <h1>
            <span className={ui.fig}>{job.reference}</span> {job.request.title}
          </h1>
          <span className={clsx(ui.soft, ui.small)}>
            {job.method.designation} · {job.material?.name ?? 'material declared'} · {job.batch.specimenCount} specimens
            {job.batch.label && ` · ${job.batch.label}`}
          </span>
        </div>
        <strong className={ui.fig} style={{ fontSize: '1.5rem' }}>
          {job.frame?.tag}
        </strong>
        <ol className={styles.benchSteps} aria-label="Steps">
          {BENCH_STEPS.map(({ key, label }, index) => (
            <li
              key={key}
              className={index === here ? styles.here : index < here ? styles.gone : undefined}
              aria-current={index === here ? 'step' : undefined}
            >
              {label}
            </li>
          ))}
        </ol>
      </header>
      <div className={styles.benchBody}>{children}</div>
      <div className={clsx(styles.bar, ui.noPrint)}>{bar}</div>
    </div>
  );
}

function NetworkState() {
  const { waiting, lost } = useOutbox();
  if (!lost || waiting === 0) return null;
  return (
    <p className={styles.netLost} role="alert">
      No connection. {waiting === 1 ? 'One entry is' : `${waiting} entries are`} saved on this device and sent again by
      itself. Nothing is lost and nothing happens twice.
    </p>
  );
}

const CLOSING =
  'Follow the operator’s guide of the equipment, your lab’s rules and local law; this sheet replaces neither training nor supervision.';

/** What can hurt somebody at this job, and whom to follow. */
export function Cautions({ cautions }: { cautions: readonly string[] }) {
  const own = cautions.filter((caution) => !/replaces neither training/.test(caution));
  return (
    <section className={styles.cautions} aria-label="Cautions">
      <ul>
        {own.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p className={styles.last}>{CLOSING}</p>
    </section>
  );
}
