import { clsx } from 'clsx';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { RequestView } from '#libs/contract/src/index.js';
import { BatchTable } from '../../features/requests/batch-table.js';
import { Messages } from '../../features/requests/messages.js';
import { PromiseSpan } from '../../features/requests/promise.js';
import { limitsText } from '../../features/requests/limits-text.js';
import { DISPOSALS, REQUEST_STATE_WORDS, REQUEST_WAY, placeOf } from '../../features/requests/words.js';
import { ResultsTable } from '../../features/results/results-table.js';
import { useHasRole } from '../../features/session/session.js';
import { ReasonDialog } from '../../ui/reason-dialog.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { Steps } from '../../ui/steps.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { JobActs } from './job-acts.js';
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
  const { at, aside } = placeOf(request.state);
  return (
    <>
      <TitleBlock
        title={`${request.reference} ${request.title}`}
        back={{ to: '/requests', label: 'All requests' }}
        cells={[
          ['asked by', `${request.requester.name}, ${request.team.name}`],
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
            {request.reports.length > 0 && (
              <section className={ui.stackTight}>
                <h2>Reports</h2>
                <ul>
                  {request.reports.map((report) => (
                    <li key={report.id}>
                      <Link href={`/reports/${report.id}`}>
                        {report.number}, revision {report.revision}
                      </Link>{' '}
                      <span className={ui.soft}>{report.state}</span>
                    </li>
                  ))}
                </ul>
              </section>
            )}
          </div>
          <div className={ui.stackWide}>
            <section className={ui.stackTight}>
              <h2>When it will be done</h2>
              <PromiseSpan {...request} />
              {request.promise50At && (
                <p className={clsx(ui.small, ui.soft)}>
                  Even chance by {moment(request.promise50At)}; four chances in five by {moment(request.promise80At)}.
                </p>
              )}
            </section>
            <RequestFacts request={request} />
            <Messages requestId={request.id} messages={request.messages} />
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

function RequestActs({ request }: { request: RequestView }) {
  const [, go] = useLocation();
  const isManager = useHasRole('manager');
  const [withdrawing, setWithdrawing] = useState(false);
  const [reopening, setReopening] = useState(false);
  const act = useApiMutation<RequestView>(['requests', 'plan']);
  const copy = useApiMutation<RequestView>(['requests'], (copied) => go(`/requests/${copied.id}/edit`));
  const report = useApiMutation<{ id: string }>(['reports', 'requests'], ({ id }) => go(`/reports/${id}`));
  const can = (move: RequestView['moves'][number]) => request.moves.includes(move);
  return (
    <>
      {can('submit') && (
        <Link className={ui.button} href={`/requests/${request.id}/edit`}>
          Change
        </Link>
      )}
      {can('submit') && (
        <button
          type="button"
          className={ui.buttonMain}
          disabled={act.isPending}
          onClick={() => act.mutate(api('POST /requests/{id}/submit', { id: request.id }))}
        >
          Submit
        </button>
      )}
      {isManager && request.state === 'submitted' && (
        <Link className={ui.buttonMain} href={`/planning/intake/${request.id}`}>
          Review
        </Link>
      )}
      {isManager && request.state === 'in-review' && (
        <button
          type="button"
          className={ui.buttonMain}
          disabled={report.isPending}
          onClick={() => report.mutate(api('POST /requests/{id}/report', { id: request.id }))}
        >
          Prepare the report
        </button>
      )}
      {can('reopen') && isManager && (
        <button type="button" className={ui.button} onClick={() => setReopening(true)}>
          Back to work …
        </button>
      )}
      {can('close') && isManager && (
        <button
          type="button"
          className={ui.button}
          onClick={() => act.mutate(api('POST /requests/{id}/close', { id: request.id }))}
        >
          Close
        </button>
      )}
      <button
        type="button"
        className={ui.button}
        disabled={copy.isPending}
        onClick={() => copy.mutate(api('POST /requests/{id}/copy', { id: request.id }))}
      >
        Copy
      </button>
      {can('withdraw') && (
        <button type="button" className={ui.buttonSharp} onClick={() => setWithdrawing(true)}>
          Withdraw …
        </button>
      )}
      <ErrorMessage error={act.error ?? copy.error ?? report.error} />
      {reopening && (
        <ReasonDialog
          title={`Send ${request.reference} back to work`}
          explain="Results can be entered and corrected again; the review begins anew when the work is done."
          button="Send it back to work"
          onWhy={(why) => act.mutateAsync(api('POST /requests/{id}/reopen', { id: request.id, body: { why } }))}
          onClose={() => setReopening(false)}
        />
      )}
      {withdrawing && <WithdrawDialog request={request} onClose={() => setWithdrawing(false)} />}
    </>
  );
}

function WithdrawDialog({ request, onClose }: { request: RequestView; onClose: () => void }) {
  const withdraw = useApiMutation(['requests', 'plan']);
  return (
    <ReasonDialog
      title={`Withdraw ${request.reference}`}
      explain="Its jobs leave the plan at once, and this cannot be taken back. A copy of the request can be made at any time."
      button="Withdraw and take its jobs out of the plan"
      sharp
      optional
      onWhy={(why) => withdraw.mutateAsync(api('POST /requests/{id}/withdraw', { id: request.id, body: { why } }))}
      onClose={onClose}
    />
  );
}
