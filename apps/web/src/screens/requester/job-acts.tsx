import { clsx } from 'clsx';
import { useState } from 'react';
import type { BatchView } from '#libs/contract/src/index.js';
import { useHasRole } from '../../features/session/session.js';
import { ReasonDialog } from '../../ui/reason-dialog.js';
import { useApiMutation } from '../../api-client/queries.js';
import { api } from '../../api-client/api.js';
import { ui } from '../../ui/styles.js';

type Job = NonNullable<BatchView['job']>;

/** What the manager can do with the job of a batch: let a blocked one be planned again, or end it. */
export function JobActs({ job }: { job: Job }) {
  const isManager = useHasRole('manager');
  const [asking, setAsking] = useState<'unblock' | 'abort' | null>(null);
  const act = useApiMutation(['requests', 'plan', 'jobs']);
  if (!isManager || job.state === 'done' || job.state === 'aborted') return null;
  const send = (how: 'unblock' | 'abort') => (why: string) =>
    act.mutateAsync(api(`POST /jobs/{id}/${how}`, { id: job.id, body: { why } }));
  const onClose = () => setAsking(null);
  return (
    <span className={clsx(ui.row, ui.noPrint)}>
      {job.state === 'blocked' && (
        <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={() => setAsking('unblock')}>
          Unblock …
        </button>
      )}
      <button type="button" className={clsx(ui.buttonSharp, ui.buttonSmall)} onClick={() => setAsking('abort')}>
        End the job …
      </button>
      {asking === 'unblock' && (
        <ReasonDialog
          title={`Unblock ${job.reference}`}
          explain="It is planned again, and technicians may take it. Say what was put right."
          button="Unblock it"
          onWhy={send('unblock')}
          onClose={onClose}
        />
      )}
      {asking === 'abort' && (
        <ReasonDialog
          title={`End ${job.reference}`}
          explain="It leaves the plan for good; this cannot be taken back. Results that are kept so far stay."
          button="End the job for good"
          sharp
          onWhy={send('abort')}
          onClose={onClose}
        />
      )}
    </span>
  );
}
