import type { JobView, SetupStepView } from '#libs/contract/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import './bench.css';

const WORDS = { 'take-off': 'take off', keep: 'stays', 'put-on': 'put on' } as const;

/** What comes off, stays and goes on, in working order; the one to do now stands out. */
export function SetupSteps({ steps, now }: { steps: readonly SetupStepView[]; now: SetupStepView | undefined }) {
  return (
    <ol className="setup-steps">
      {steps.map((step) => (
        <li
          key={`${step.action}-${step.item.itemId}`}
          className={`${step.action}${step === now ? ' now' : ''}`}
          aria-current={step === now ? 'step' : undefined}
        >
          <span className="what">{WORDS[step.action]}</span>
          <span>
            <span className="tag">{step.item.tag}</span> {step.item.name}
            <br />
            <span className="soft small">
              {[
                step.item.role.replaceAll('-', ' '),
                step.action === 'put-on' && step.item.place ? `from ${step.item.place}` : '',
                step.item.rating ? `${formatNumber(step.item.rating)} ${step.item.ratingUnit ?? ''}` : '',
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
              <span className="fit">✓ confirmed</span>
            ) : (
              <span className="soft small">{step.minutes} min</span>
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
