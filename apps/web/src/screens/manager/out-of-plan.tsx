import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { PlanView } from '#libs/contract/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Jobs without a place, and jobs that are held. */
export function OutOfPlan({ plan, mayChange }: { plan: PlanView; mayChange: boolean }) {
  const release = useApiMutation(['plan', 'requests']);
  if (plan.unplaced.length === 0 && plan.held.length === 0) return null;
  return (
    <div className={ui.split}>
      {plan.unplaced.length > 0 && (
        <section>
          <h2 className={ui.act}>▲ No place in the plan</h2>
          <ul>
            {plan.unplaced.map((job) => (
              <li key={job.jobId} className={ui.entry}>
                <Link href={`/requests/${job.requestId}`} className={ui.fig}>
                  {job.jobReference}
                </Link>{' '}
                {job.title}
                <br />
                <span className={ui.small}>{job.reasons.join(' ')}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {plan.held.length > 0 && (
        <section>
          <h2>Held</h2>
          <ul>
            {plan.held.map((job) => (
              <li key={job.jobId} className={clsx(ui.rowBetween, ui.entry)}>
                <span>
                  <Link href={`/requests/${job.requestId}`} className={ui.fig}>
                    {job.jobReference}
                  </Link>{' '}
                  {job.title}
                  <br />
                  <span className={ui.small}>{job.why}</span>
                </span>
                {mayChange && (
                  <button
                    type="button"
                    className={clsx(ui.button, ui.buttonSmall)}
                    onClick={() => release.mutate(api('DELETE /plan/holds/{jobId}', { jobId: job.jobId }))}
                  >
                    Release
                  </button>
                )}
              </li>
            ))}
          </ul>
          <ErrorMessage error={release.error} />
        </section>
      )}
    </div>
  );
}
