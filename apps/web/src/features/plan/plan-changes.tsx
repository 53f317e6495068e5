import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { PlanChangeView, PlanPlace, PlanView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { ui } from '../../ui/styles.js';

const SHOWN_AT_FIRST = 8;

/** What the newest plan that moved a job moved: from where, to where, and why. Small shifts and jobs that have begun are not told. */
export function PlanChanges({ plan }: { plan: PlanView }) {
  const { moment } = useMoments();
  const { changes, changedBy } = plan;
  const rest = changes.slice(SHOWN_AT_FIRST);
  return (
    <section className={ui.stackTight} id="changed" aria-label="What moved">
      <h2>What moved</h2>
      {changedBy === null ? (
        <p className={ui.soft}>
          {plan.version === 1
            ? 'This is the first plan: there is none before it.'
            : 'No plan has moved a job yet, but for small shifts.'}
        </p>
      ) : (
        <>
          <p className={ui.soft}>
            Plan v{changedBy.version} of {moment(changedBy.publishedAt)}, against the plan before it.
            {changedBy.version < plan.version && ' Newer plans moved no job.'}
          </p>
          <ChangeTable changes={changes.slice(0, SHOWN_AT_FIRST)} />
        </>
      )}
      {rest.length > 0 && (
        <details>
          <summary>{rest.length === 1 ? 'One more job' : `${rest.length} more jobs`}</summary>
          <ChangeTable changes={rest} />
        </details>
      )}
    </section>
  );
}

function ChangeTable({ changes }: { changes: readonly PlanChangeView[] }) {
  return (
    <div className={ui.scrollX}>
      <table>
        <thead>
          <tr>
            <th>Job</th>
            <th>Before</th>
            <th>Now</th>
            <th>Why</th>
          </tr>
        </thead>
        <tbody>
          {changes.map(({ jobId, jobReference, requestId, title, was, is, why }) => (
            <tr key={jobId}>
              <th>
                <Link href={`/requests/${requestId}`} className={ui.fig}>
                  {jobReference}
                </Link>
                <br />
                <span className={clsx(ui.small, ui.soft)}>{title}</span>
              </th>
              <td>{was ? <Place place={was} /> : 'not in the plan'}</td>
              <td>{is ? <Place place={is} /> : <span className={ui.act}>▲ no longer in the plan</span>}</td>
              <td>{why}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Place({ place }: { place: PlanPlace }) {
  const { moment } = useMoments();
  return (
    <>
      <span className={ui.fig}>{place.frameTag}</span>
      <br />
      <span className={ui.oneLine}>{moment(place.startsAt)}</span>
    </>
  );
}
