import { clsx } from 'clsx';
import { useState } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { BlockDialog } from '../../features/bench/block-dialog.js';
import { BenchFrame, Cautions } from '../../features/bench/bench-frame.js';
import { CheckList } from '../../features/bench/check-list.js';
import { useJobAct } from '../../features/bench/sending.js';
import { WhyDialog } from '../../features/bench/why-dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { api } from '../../api-client/api.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/bench/bench.module.css';

/** Checks before the first specimen, then the start. The server starts nothing while a required one is open. */
export function ChecksStep({ job }: { job: JobView }) {
  const act = useJobAct(job.id);
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  const [asking, setAsking] = useState<'give-back' | 'block' | null>(null);
  const open = job.checks.filter(({ required, done }) => required && !done).length;
  async function start() {
    setBusy(true);
    setError(null);
    try {
      await act(api('POST /jobs/{id}/start', { id: job.id }));
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
  }
  return (
    <BenchFrame
      job={job}
      step="checks"
      bar={
        <>
          <ErrorMessage error={error} />
          <button type="button" className={ui.button} onClick={() => setAsking('give-back')}>
            Give back …
          </button>
          <button type="button" className={ui.buttonSharp} onClick={() => setAsking('block')}>
            Something failed …
          </button>
          <button
            type="button"
            className={clsx(ui.buttonMain, styles.go)}
            disabled={open > 0 || busy}
            onClick={() => void start()}
          >
            {open > 0 ? `${open} ${open === 1 ? 'check' : 'checks'} to go` : 'Start the first specimen'}
          </button>
        </>
      }
    >
      <div className={styles.setup}>
        <CheckList job={job} />
        <Cautions cautions={job.cautions} />
      </div>
      {asking === 'give-back' && (
        <WhyDialog
          title={`Give ${job.reference} back`}
          explain="It goes back into the plan, and somebody else may take it. What is fitted stays on the frame."
          button="Give it back"
          onWhy={(why) => act(api('POST /jobs/{id}/give-back', { id: job.id, body: { why } }))}
          onClose={() => setAsking(null)}
        />
      )}
      {asking === 'block' && <BlockDialog job={job} onClose={() => setAsking(null)} />}
    </BenchFrame>
  );
}
