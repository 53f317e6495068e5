import { clsx } from 'clsx';
import { useState } from 'react';
import { Link } from 'wouter';
import type { BookingView, CauseView } from '#libs/contract/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
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
  const { moment } = useMoments();
  const [holding, setHolding] = useState(false);
  const act = useApiMutation(['plan', 'requests']);
  const { jobId, frameId } = booking;
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
        {booking.jobId && <Why jobId={booking.jobId} />}
      </div>
      {mayChange && jobId && (
        <div className={ui.row}>
          {booking.pinned ? (
            <button
              type="button"
              className={ui.button}
              onClick={() => act.mutate(api('DELETE /plan/pins/{jobId}', { jobId }))}
            >
              Unpin: the planner may move it again
            </button>
          ) : (
            <button
              type="button"
              className={ui.button}
              disabled={!frameId}
              onClick={() =>
                frameId && act.mutate(api('POST /plan/pins', { body: { jobId, frameId, startsAt: booking.startsAt } }))
              }
            >
              Pin it here
            </button>
          )}
          <button type="button" className={ui.button} onClick={() => setHolding(true)}>
            Hold: keep it out of the plan …
          </button>
          <ErrorMessage error={act.error} />
        </div>
      )}
      {holding && booking.jobId && (
        <HoldDialog jobId={booking.jobId} reference={booking.jobReference ?? ''} onClose={() => setHolding(false)} />
      )}
    </section>
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
          <span className={ui.num}>{span(cause.hours * 60)}</span>
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
  const [why, setWhy] = useState('');
  const hold = useApiMutation(['plan', 'requests'], onClose);
  return (
    <Dialog title={`Hold ${reference}`} onClose={onClose}>
      <p>The job leaves the plan until it is released again. Its requester sees the reason.</p>
      <TextField label="Why" required value={why} onChange={setWhy} autoFocus />
      <ErrorMessage error={hold.error} />
      <button
        type="button"
        className={ui.buttonMain}
        disabled={!why.trim() || hold.isPending}
        onClick={() => hold.mutate(api('POST /plan/holds', { body: { jobId, why } }))}
      >
        Hold it
      </button>
    </Dialog>
  );
}
