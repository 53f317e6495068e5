import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { RequestView } from '#libs/contract/src/index.js';
import { BatchTable } from '../../features/requests/batch-table.js';
import { Messages } from '../../features/requests/messages.js';
import { PromiseSpan } from '../../features/requests/promise.js';
import { limitsText } from '../../features/requests/limits-text.js';
import { DISPOSALS, REQUEST_STATE_WORDS, REQUEST_WAY, placeOf } from '../../features/requests/words.js';
import { ResultsTable } from '../../features/results/results-table.js';
import { FetchStates } from '../../ui/fetch-states.js';
import { useHasRole } from '../../features/session/session.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { Steps } from '../../ui/steps.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { JobActs } from './job-acts.js';
import { RequestActs } from './request-acts.js';
import { ui } from '../../ui/styles.js';

/** One request: where it is, what it waits for, its batches, messages and reports. */
export function RequestScreen({ id }: { id: string }) {
  const request = useApiQuery('requests', api('GET /requests/{id}', { id }));
  return (
    <FetchStates of={request} what="the request">
      {(value) => <RequestSheet request={value} />}
    </FetchStates>
  );
}

function RequestSheet({ request }: { request: RequestView }) {
  const { moment } = useMoments();
  const isLab = useHasRole('manager', 'technician');
  const { at, aside } = placeOf(request.state);
  return (
    <>
      <TitleBlock
        title={`${request.reference} ${request.title}`}
        back={{ to: '/requests', label: 'All requests' }}
        cells={[
          ['requested by', `${request.requester.name}, ${request.team.name}`],
          ['due', moment(request.dueAt)],
        ]}
      >
        <RequestActs request={request} />
      </TitleBlock>
      <div className={ui.stackWide}>
        <Steps
          label="Where the request is"
          steps={REQUEST_WAY}
          at={at}
          aside={aside ? REQUEST_STATE_WORDS[request.state] : null}
        />
        <div className={ui.splitMainLeft}>
          <div className={ui.stackWide}>
            <section className={request.late ? ui.noteAct : ui.note}>
              <strong>{request.waitsFor || 'Waits for nothing.'}</strong>
              {request.promiseNote && <p>{request.promiseNote}</p>}
            </section>
            <BatchTable request={request} jobActs={(job) => <JobActs job={job} />} />
            {HAS_RESULTS.includes(request.state) && <Results id={request.id} />}
            {request.reports.length > 0 && <Reports reports={request.reports} />}
          </div>
          <div className={ui.stackWide}>
            <WhenDone request={request} />
            <RequestFacts request={request} />
            <Messages
              requestId={request.id}
              messages={request.messages}
              to={isLab ? request.requester.name : 'the lab'}
            />
          </div>
        </div>
      </div>
    </>
  );
}

const HAS_RESULTS: readonly string[] = ['in-work', 'in-review', 'reported', 'closed'];

/** What is found so far, before and beside the report. */
function Results({ id }: { id: string }) {
  const results = useApiQuery('results', api('GET /requests/{id}/results', { id }));
  const shown = (results.value ?? []).filter(({ rows }) =>
    rows.some(({ values }) => Object.values(values).some(Boolean)),
  );
  if (shown.length === 0) return null;
  return (
    <section className={ui.stack}>
      <h2>Results so far</h2>
      {shown.map((batch) => (
        <ResultsTable key={batch.batchId} results={batch} />
      ))}
    </section>
  );
}

function RequestFacts({ request }: { request: RequestView }) {
  const { moment } = useMoments();
  const { conformity } = request;
  return (
    <dl className={ui.facts}>
      <dt>What for</dt>
      <dd>{request.purpose || 'not said'}</dd>
      <dt>Afterwards</dt>
      <dd>{DISPOSALS.find(({ value }) => value === request.disposal)?.label}</dd>
      {conformity && (
        <>
          <dt>Conformity</dt>
          <dd>{limitsText(conformity)}</dd>
        </>
      )}
      <dt>Submitted</dt>
      <dd>{moment(request.submittedAt)}</dd>
      <dt>Accepted</dt>
      <dd>
        {moment(request.acceptedAt)}
        {request.review && ` by ${request.review.by.name}`}
      </dd>
    </dl>
  );
}

function Reports({ reports }: Pick<RequestView, 'reports'>) {
  return (
    <section className={ui.stackTight}>
      <h2>Reports</h2>
      <ul>
        {reports.map((report) => (
          <li key={report.id}>
            <Link href={`/reports/${report.id}`}>
              {report.number}, revision {report.revision}
            </Link>{' '}
            <span className={ui.soft}>{report.state}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function WhenDone({ request }: { request: RequestView }) {
  const { moment } = useMoments();
  return (
    <section className={ui.stackTight}>
      <h2>When it will be done</h2>
      <PromiseSpan {...request} />
      {request.promise50At && (
        <p className={clsx(ui.small, ui.soft)}>
          Even chance by {moment(request.promise50At)}; four chances in five by {moment(request.promise80At)}.
        </p>
      )}
    </section>
  );
}
