import type { JobView } from '#libs/contract/src/index.js';
import { ui } from '../../ui/styles.js';
import { isTyped } from './specimen-form.js';
import styles from './bench.module.css';

/** The specimens of a job; what is typed for one and not kept is marked. */
export function SpecimenTabs({
  job,
  at,
  onChoose,
}: {
  job: JobView;
  at: string | undefined;
  onChoose: (id: string) => void;
}) {
  return (
    <div className={styles.specimenTabs} role="group" aria-label="Specimens">
      {job.specimens.map((specimen) => (
        <button
          key={specimen.id}
          type="button"
          className={styles[specimen.fate]}
          aria-current={specimen.id === at ? 'true' : undefined}
          onClick={() => onChoose(specimen.id)}
        >
          {shortLabel(specimen.label)}
          <span className={ui.unseen}> {specimen.fate}</span>
          {specimen.fate === 'tested' && ' ✓'}
          {isTyped(job, specimen) && <span title="typed, not saved"> …</span>}
        </button>
      ))}
    </div>
  );
}

/** What sets a label apart from the others of the job. */
export function shortLabel(label: string): string {
  return label.split('-').at(-1) ?? label;
}
