import { clsx } from 'clsx';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { ImpactView } from '#libs/contract/src/index.js';
import { useHasRole } from '../../features/session/session.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Every result, report and person that an item touched since it was last found good; from here a nonconformity is opened. */
export function ImpactScreen({ id }: { id: string }) {
  const { fromLocalInput, moment } = useMoments();
  const [since, setSince] = useState('');
  const impact = useApiQuery(
    'items',
    api('GET /items/{id}/impact', { id, since: fromLocalInput(since) }),
    undefined,
    true,
  );
  return (
    <FetchStates of={impact} what="what it touched">
      {(value) => (
        <>
          <TitleBlock
            title={`What ${value.item.tag} touched`}
            back={{ to: `/register/items/${id}`, label: `${value.item.tag} ${value.item.name}` }}
            cells={[
              ['jobs', value.jobs.length],
              ['reports', value.reports.length],
              ['people', value.people.length],
            ]}
          />
          <div className={ui.stackWide}>
            <div className={ui.rowEnd}>
              <p className={clsx(ui.note, ui.grow)}>
                From <strong>{moment(value.since)}</strong> on: {value.sinceWhy}
              </p>
              <TextField label="Look from another day" type="date" value={since} onChange={setSince} />
            </div>
            <div className={ui.splitMainLeft}>
              <Jobs impact={value} />
              <div className={ui.stackWide}>
                <Reports reports={value.reports} />
                <section>
                  <h2>People to tell</h2>
                  <p>{value.people.map(({ name }) => name).join(', ') || <span className={ui.soft}>none</span>}</p>
                </section>
                {value.upcomingJobs.length > 0 && <JobsAhead jobs={value.upcomingJobs} />}
                <OpenNonconformity impact={value} since={fromLocalInput(since)} awaited={impact.refreshing} />
              </div>
            </div>
          </div>
        </>
      )}
    </FetchStates>
  );
}

function Jobs({ impact }: { impact: ImpactView }) {
  const { moment } = useMoments();
  return (
    <section>
      <h2>Jobs</h2>
      {impact.jobs.length === 0 && <p className={ui.soft}>No job was run with it in that time.</p>}
      {impact.jobs.length > 0 && (
        <table>
          <thead>
            <tr>
              <th>Job</th>
              <th>Request</th>
              <th>Finished</th>
              <th className={ui.num}>Results</th>
            </tr>
          </thead>
          <tbody>
            {impact.jobs.map((job) => (
              <tr key={job.id}>
                <th className={ui.fig}>{job.reference}</th>
                <td>
                  <Link href={`/requests/${job.requestId}`} className={ui.fig}>
                    {job.requestReference}
                  </Link>
                </td>
                <td>{moment(job.finishedAt)}</td>
                <td className={ui.num}>{job.results}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function Reports({ reports }: Pick<ImpactView, 'reports'>) {
  return (
    <section>
      <h2>Reports</h2>
      {reports.length === 0 && <p className={ui.soft}>none</p>}
      <ul>
        {reports.map((report) => (
          <li key={report.id}>
            <Link href={`/reports/${report.id}`}>
              {report.number}, revision {report.revision}
            </Link>{' '}
            <span className={ui.soft}>{report.requestReference}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function JobsAhead({ jobs }: { jobs: ImpactView['upcomingJobs'] }) {
  const { moment } = useMoments();
  return (
    <section>
      <h2>Jobs ahead that need it</h2>
      <ul>
        {jobs.map((job) => (
          <li key={job.id}>
            <span className={ui.fig}>{job.reference}</span> {moment(job.startsAt)}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** @param awaited whether the list is about to change: it is kept as it is read */
function OpenNonconformity({ impact, since, awaited }: { impact: ImpactView; since: string | null; awaited: boolean }) {
  const mayOpen = useHasRole('manager');
  const [, go] = useLocation();
  const [what, setWhat] = useState('');
  const open = useApiMutation(['items'], () => go('/register/nonconformities'));
  if (!mayOpen) return null;
  return (
    <section className={clsx(ui.stack, ui.framed)}>
      <h2>Open a nonconformity</h2>
      <p className={clsx(ui.small, ui.soft)}>
        It keeps this list as it is now, until it is decided what becomes of the results.
      </p>
      <TextField label="What does not conform" rows={2} value={what} onChange={setWhat} />
      <ErrorMessage error={open.error} />
      <div>
        <button
          type="button"
          className={ui.buttonMain}
          disabled={!what.trim() || open.isPending || awaited}
          onClick={() =>
            open.mutate(
              api('POST /items/{id}/nonconformity', {
                id: impact.item.id,
                body: { what, ...(since ? { since } : {}) },
              }),
            )
          }
        >
          Open it with {counted(impact.jobs.length, 'job')} and {counted(impact.reports.length, 'report')}
        </button>
      </div>
    </section>
  );
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
