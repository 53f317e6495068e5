import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { RequestView } from '#libs/contract/src/index.js';
import { useHasRole } from '../../features/session/session.js';
import { ReasonDialog } from '../../ui/reason-dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

type Act = ReturnType<typeof useApiMutation<RequestView>>;

/** What can be done with a request now, by the person who looks at it. */
export function RequestActs({ request }: { request: RequestView }) {
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
      {can('submit') && <DraftActs request={request} act={act} />}
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
      {reopening && <ReopenDialog request={request} act={act} onClose={() => setReopening(false)} />}
      {withdrawing && <WithdrawDialog request={request} onClose={() => setWithdrawing(false)} />}
    </>
  );
}

function DraftActs({ request, act }: { request: RequestView; act: Act }) {
  return (
    <>
      <Link className={ui.button} href={`/requests/${request.id}/edit`}>
        Change
      </Link>
      <button
        type="button"
        className={ui.buttonMain}
        disabled={act.isPending}
        onClick={() => act.mutate(api('POST /requests/{id}/submit', { id: request.id }))}
      >
        Submit
      </button>
    </>
  );
}

function ReopenDialog({ request, act, onClose }: { request: RequestView; act: Act; onClose: () => void }) {
  return (
    <ReasonDialog
      title={`Send ${request.reference} back to work`}
      explain="Results can be entered and corrected again; the review begins anew when the work is done."
      button="Send it back to work"
      onWhy={(why) => act.mutateAsync(api('POST /requests/{id}/reopen', { id: request.id, body: { why } }))}
      onClose={onClose}
    />
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
