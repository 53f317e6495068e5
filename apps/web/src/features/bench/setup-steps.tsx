import { clsx } from 'clsx';
import { linkWords } from '#libs/contract/src/index.js';
import type { JobView, SetupStepView } from '#libs/contract/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';
import styles from './bench.module.css';

const WORDS = { 'take-off': 'take off', keep: 'stays', 'put-on': 'put on' } as const;

/** What comes off, stays and goes on, in working order; the one to do now stands out. */
export function SetupSteps({ steps, now }: { steps: readonly SetupStepView[]; now: SetupStepView | undefined }) {
  return (
    <ol className={styles.setupSteps}>
      {steps.map((step) => (
        <li
          key={`${step.action}-${step.item.itemId}`}
          className={clsx(styles[step.action], step === now && styles.now)}
          aria-current={step === now ? 'step' : undefined}
        >
          <span className={styles.what}>{WORDS[step.action]}</span>
          <span>
            <span className={styles.tag}>{step.item.tag}</span> {step.item.name}
            <br />
            <span className={clsx(ui.soft, ui.small)}>
              {[
                linkWords(step.item.role),
                step.action === 'put-on' && step.item.place ? `from ${step.item.place}` : '',
                step.item.rating ? `${formatNumber(step.item.rating)}\u00A0${step.item.ratingUnit ?? ''}` : '',
                step.item.massKg >= 10 ? `▲ ${formatNumber(step.item.massKg)} kg: use the hoist or two people` : '',
              ]
                .filter(Boolean)
                .join(' · ')}
              {step === now &&
                step.standIns.length > 0 &&
                ` · equal: ${step.standIns.map(({ tag }) => tag).join(', ')}`}
            </span>
          </span>
          <span>
            {step.confirmed ? (
              <span className={ui.fit}>✓ confirmed</span>
            ) : (
              <span className={clsx(ui.soft, ui.small)}>{step.minutes} min</span>
            )}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** The step that waits for its tag. */
export function openStep(job: JobView): SetupStepView | undefined {
  return job.setup.find(({ confirmed }) => !confirmed);
}
