import { clsx } from 'clsx';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { BatchView, PreviewBody, RequestView, ReviewBody } from '#libs/contract/src/index.js';
import { AdviceList, Candidates, NeedsList, Refusals } from '../../features/matching/answer-views.js';
import { LadderDrawing } from '../../features/matching/force-ladder.js';
import { usePreview } from '../../features/matching/use-preview.js';
import { limitsText } from '../../features/requests/limits-text.js';
import { BatchTable } from '../../features/requests/batch-table.js';
import { Messages } from '../../features/requests/messages.js';
import { DISPOSALS, REQUEST_STATE_WORDS } from '../../features/requests/words.js';
import { useHasRole } from '../../features/session/session.js';
import { TrainDrawing } from '../../features/train/train-drawing.js';
import { Dialog } from '../../ui/dialog.js';
import { FetchStates, ErrorMessage, Loading } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick } from '../../ui/fields/ticks.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** The review of a request before it is accepted: every point of ISO/IEC 17025:2017, 7.1 is settled here. */
export function ReviewScreen({ id }: { id: string }) {
  const { moment } = useMoments();
  const request = useApiQuery('requests', api('GET /requests/{id}', { id }));
  return (
    <FetchStates of={request} what="the request">
      {(value) => (
        <>
          <TitleBlock
            title={`${value.reference} ${value.title}`}
            back={{ to: '/planning/intake', label: 'Intake' }}
            cells={[
              ['asked by', `${value.requester.name}, ${value.team.name}`],
              ['due', moment(value.dueAt)],
              ['state', REQUEST_STATE_WORDS[value.state]],
            ]}
          />
          <div className={ui.splitMainLeft}>
            <div className={ui.stackWide}>
              <p className={ui.note}>{value.purpose || 'No purpose is given.'}</p>
              <BatchTable request={value} />
              {value.batches.map((batch) => (
                <Capability key={batch.id} batch={batch} />
              ))}
            </div>
            <div className={ui.stackWide}>
              <Review request={value} />
              <Messages requestId={value.id} messages={value.messages} />
            </div>
          </div>
        </>
      )}
    </FetchStates>
  );
}

/** Whether the lab can do one batch today, with its trains and reasons. */
function Capability({ batch }: { batch: BatchView }) {
  const body: PreviewBody = { methodId: batch.method.id, materialId: batch.material?.id ?? null, ask: batch.ask };
  const { answer, error } = usePreview(body);
  return (
    <section className={ui.stack}>
      <h2>Can the lab do {batch.label || `batch ${batch.position}`}?</h2>
      <ErrorMessage error={error} />
      {!answer && !error && <Loading what="the load trains" />}
      {answer && (
        <>
          <p className={answer.candidates.length > 0 ? ui.noteFit : ui.noteAct}>
            {answer.candidates.length > 0
              ? `Yes: ${answer.candidates.length} load trains pass every rule.`
              : 'No load train passes every rule.'}
          </p>
          {answer.ladder && <LadderDrawing ladder={answer.ladder} />}
          <Candidates
            candidates={answer.candidates}
            items={answer.items}
            picture={(index) => answer.drawings[index] && <TrainDrawing segments={answer.drawings[index].segments} />}
          />
          {answer.advice.length > 0 && (
            <details>
              <summary>What would {answer.candidates.length > 0 ? 'open more frames' : 'make it fit'}</summary>
              <AdviceList advice={answer.advice} items={answer.items} />
            </details>
          )}
          <details>
            <summary>What the test needs</summary>
            <NeedsList needs={answer.needs} />
          </details>
          {answer.refusals.length > 0 && (
            <details>
              <summary>Why not the other {answer.refusals.length} frames</summary>
              <Refusals refusals={answer.refusals} items={answer.items} />
            </details>
          )}
        </>
      )}
    </section>
  );
}

const NOTHING_SETTLED: ReviewBody = {
  methodAgreed: false,
  capabilityShown: false,
  specimensAgreed: false,
  disposalAgreed: false,
  decisionRuleAgreed: false,
  differences: '',
  note: '',
};

function Review({ request }: { request: RequestView }) {
  const { moment } = useMoments();
  const mayReview = useHasRole('manager') && request.state === 'submitted';
  const toast = useToast();
  const [, go] = useLocation();
  const [review, setReview] = useState<ReviewBody>(NOTHING_SETTLED);
  const [hurried, setHurried] = useState(false);
  const [saying, setSaying] = useState<'return' | 'decline' | null>(null);
  const accept = useApiMutation(['requests', 'plan'], () => {
    toast(`${request.reference} is accepted. Its jobs go into the next plan.`);
    go('/planning/intake');
  });
  const points = pointsOf(request);
  const open = points.filter(({ key }) => !review[key]).length;
  if (!mayReview)
    return (
      request.review && (
        <p className={ui.note}>
          Reviewed by {request.review.by.name}, {moment(request.review.at)}.
        </p>
      )
    );
  return (
    <section className={clsx(ui.stack, ui.framed)}>
      <h2>Review</h2>
      <p className={clsx(ui.small, ui.soft)}>
        Points of ISO/IEC 17025:2017, 7.1. Each must be settled before the request is accepted.
      </p>
      <div className={ui.stackTight}>
        {points.map(({ key, label }) => (
          <Tick
            key={key}
            label={label}
            checked={review[key] === true}
            onChange={(on) => setReview({ ...review, [key]: on })}
          />
        ))}
      </div>
      <TextField
        label="Differences, and how they were settled"
        required={false}
        rows={2}
        value={review.differences ?? ''}
        onChange={(differences) => setReview({ ...review, differences })}
      />
      <TextField
        label="Note for the bench"
        required={false}
        rows={2}
        value={review.note ?? ''}
        onChange={(note) => setReview({ ...review, note })}
      />
      <ErrorMessage
        error={
          hurried && open > 0
            ? new Error('Tick every point that is settled, or return the request with a question.')
            : accept.error
        }
      />
      <div className={ui.row}>
        <button
          type="button"
          className={ui.buttonMain}
          disabled={accept.isPending}
          onClick={() => {
            setHurried(open > 0);
            if (open === 0)
              accept.mutate(api('POST /requests/{id}/accept', { id: request.id, body: bodyOf(review, request) }));
          }}
        >
          Accept
        </button>
        <button type="button" className={ui.button} onClick={() => setSaying('return')}>
          Return with a question …
        </button>
        <button type="button" className={ui.buttonSharp} onClick={() => setSaying('decline')}>
          Decline …
        </button>
        {open > 0 && (
          <span className={clsx(ui.soft, ui.small)}>
            {open === 1 ? 'one point is open' : `${open} points are open`}
          </span>
        )}
      </div>
      {saying && <SayWhy request={request} how={saying} onClose={() => setSaying(null)} />}
    </section>
  );
}

function bodyOf(review: ReviewBody, request: RequestView): ReviewBody {
  const { decisionRuleAgreed, ...rest } = review;
  return request.conformity ? { ...rest, decisionRuleAgreed: decisionRuleAgreed ?? false } : rest;
}

type Point = 'methodAgreed' | 'capabilityShown' | 'specimensAgreed' | 'disposalAgreed' | 'decisionRuleAgreed';

function pointsOf(request: RequestView): { key: Point; label: string }[] {
  const methods = [
    ...new Set(request.batches.map(({ method }) => `${method.designation} (version ${method.version})`)),
  ].join(', ');
  const disposal = DISPOSALS.find(({ value }) => value === request.disposal)?.label.toLowerCase() ?? '';
  const points: { key: Point; label: string }[] = [
    { key: 'methodAgreed', label: `The method suits what they want to find out: ${methods}` },
    { key: 'capabilityShown', label: 'The lab can do it: at least one load train for every batch' },
    { key: 'specimensAgreed', label: `Specimens agreed: ${request.specimens}, their number, shape and condition` },
    { key: 'disposalAgreed', label: `Afterwards: ${disposal}` },
  ];
  if (request.conformity)
    points.push({
      key: 'decisionRuleAgreed',
      label: `Specification and decision rule agreed: ${limitsText(request.conformity)}`,
    });
  return points;
}

function SayWhy({ request, how, onClose }: { request: RequestView; how: 'return' | 'decline'; onClose: () => void }) {
  const [why, setWhy] = useState('');
  const [, go] = useLocation();
  const send = useApiMutation(['requests'], () => go('/planning/intake'));
  const isReturn = how === 'return';
  return (
    <Dialog
      title={isReturn ? `Return ${request.reference} with a question` : `Decline ${request.reference}`}
      onClose={onClose}
    >
      <p>
        {isReturn
          ? 'The requester answers, changes the request if needed, and submits it again.'
          : 'The request ends here; this cannot be taken back. The requester sees the reason and can make a copy.'}
      </p>
      <TextField label={isReturn ? 'Question' : 'Reason'} required rows={3} value={why} onChange={setWhy} />
      <ErrorMessage error={send.error} />
      <button
        type="button"
        className={isReturn ? ui.buttonMain : ui.buttonSharp}
        disabled={!why.trim() || send.isPending}
        onClick={() => send.mutate(api(`POST /requests/{id}/${how}`, { id: request.id, body: { why } }))}
      >
        {isReturn ? 'Return it' : 'Decline it for good'}
      </button>
    </Dialog>
  );
}
