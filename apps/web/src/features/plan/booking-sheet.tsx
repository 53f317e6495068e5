import { clsx } from 'clsx';
import { useState } from 'react';
import { Link } from 'wouter';
import type { BookingView, CauseView } from '#libs/contract/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { span } from '../../ui/moments.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import styles from './causes.module.css';

/** What is known about a job on the board, why it is there, and what can be done with it. */
export function BookingSheet({
  booking,
  mayChange,
  onClose,
}: {
  booking: BookingView;
  mayChange: boolean;
  onClose: () => void;
}) {
  const { jobId } = booking;
  return (
    <section className={clsx(ui.stack, ui.framed)} aria-label={`Job ${booking.jobReference ?? ''}`}>
      <div className={ui.rowBetween}>
        <h2>
          <span className={ui.fig}>{booking.jobReference ?? 'Calibration visit'}</span> {booking.title}
        </h2>
        <button type="button" className={ui.buttonBare} onClick={onClose}>
          Close
        </button>
      </div>
      <div className={ui.split}>
        <Facts booking={booking} />
        {booking.jobId && <Why jobId={booking.jobId} />}
      </div>
      {mayChange && jobId && <Acts booking={booking} jobId={jobId} />}
    </section>
  );
}

function Facts({ booking }: { booking: BookingView }) {
  const { moment } = useMoments();
  return (
    <dl className={ui.facts}>
      {booking.requestId && (
        <>
          <dt>Request</dt>
          <dd>
            <Link href={`/requests/${booking.requestId}`}>{booking.requestReference}</Link>
          </dd>
        </>
      )}
      <dt>Work</dt>
      <dd>
        {moment(booking.startsAt)} to {moment(booking.endsAt)}
      </dd>
      <dt>Changeover</dt>
      <dd>{booking.changeoverMin > 0 ? span(booking.changeoverMin) : 'none'}</dd>
      <dt>Due</dt>
      <dd>
        {moment(booking.dueAt)}
        {booking.lateHours > 0 && <strong className={ui.act}> ▲ {span(booking.lateHours * 60)} late</strong>}
      </dd>
      <dt>Train</dt>
      <dd className={ui.fig} style={{ whiteSpace: 'normal' }}>
        {booking.train.map(({ tag }) => tag).join(' · ')}
      </dd>
    </dl>
  );
}

/** Pins the job where it is, or takes it out of the plan. */
function Acts({ booking, jobId }: { booking: BookingView; jobId: string }) {
  const [holding, setHolding] = useState(false);
  const change = useApiMutation(['plan', 'requests']);
  const { frameId, startsAt } = booking;
  const pin = () => frameId && change.mutate(api('POST /plan/pins', { body: { jobId, frameId, startsAt } }));
  const unpin = () => change.mutate(api('DELETE /plan/pins/{jobId}', { jobId }));
  return (
    <>
      <div className={ui.row}>
        {booking.pinned ? (
          <button type="button" className={ui.button} onClick={unpin}>
            Unpin: the planner may move it again
          </button>
        ) : (
          <button type="button" className={ui.button} disabled={!frameId} onClick={pin}>
            Pin it here
          </button>
        )}
        <button type="button" className={ui.button} onClick={() => setHolding(true)}>
          Hold: keep it out of the plan …
        </button>
      </div>
      <ErrorMessage error={change.error} />
      {holding && <HoldDialog jobId={jobId} reference={booking.jobReference ?? ''} onClose={() => setHolding(false)} />}
    </>
  );
}

function Why({ jobId }: { jobId: string }) {
  const why = useApiQuery('plan', api('GET /plan/jobs/{id}/why', { id: jobId }));
  return (
    <FetchStates of={why} what="the reasons">
      {(value) => (
        <div className={ui.stackTight}>
          <h3>Why there</h3>
          <ul>
            {value.whyThisFrame.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          {value.alternatives.length > 0 && (
            <details>
              <summary>Other frames</summary>
              <ul>
                {value.alternatives.map(({ frameTag, sentence }) => (
                  <li key={frameTag}>
                    <span className={ui.fig}>{frameTag}</span> {sentence}
                  </li>
                ))}
              </ul>
            </details>
          )}
          {value.causes.length > 0 && <Causes causes={value.causes} />}
        </div>
      )}
    </FetchStates>
  );
}

/** The chain of causes of a late job, each with its hours. */
export function Causes({ causes }: { causes: readonly CauseView[] }) {
  const most = Math.max(...causes.map(({ hours }) => hours), 1);
  return (
    <ul>
      {causes.map((cause) => (
        <li key={cause.sentence} className={styles.cause}>
          <span>
            <span className={styles.bar} style={{ display: 'block', width: `${(cause.hours / most) * 100}%` }} />
          </span>
          <span>{cause.sentence}</span>
        </li>
      ))}
    </ul>
  );
}

function HoldDialog({ jobId, reference, onClose }: { jobId: string; reference: string; onClose: () => void }) {
  const hold = useApiMutation(['plan', 'requests'], onClose);
  const form = useLabForm({
    initial: { why: '' },
    send: ({ why }) => hold.mutateAsync(api('POST /plan/holds', { body: { jobId, why } })),
  });
  return (
    <Dialog title={`Hold ${reference}`} onClose={onClose}>
      <FormFrame form={form}>
        <p>The job leaves the plan until it is released again. Its requester sees the reason.</p>
        <FormText form={form} name="why" label="Why" needed="Say why." autoFocus />
        <div>
          <SubmitButton form={form}>Hold it</SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}
