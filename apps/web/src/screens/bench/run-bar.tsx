import { clsx } from 'clsx';
import { useState } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import type { RunQuestion } from '../../features/bench/run-dialogs.js';
import { useJobAct } from '../../features/bench/sending.js';
import type { EntryState } from '../../features/bench/specimen-entry.js';
import { shortLabel } from '../../features/bench/specimen-tabs.js';
import type { Specimen } from '../../features/bench/typed-figures.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/bench/bench.module.css';

interface Props {
  job: JobView;
  specimen: Specimen | undefined;
  entry: EntryState | null;
  /** Specimens that are neither tested nor invalid. */
  open: number;
  error: Error | null;
  onAsk: (question: RunQuestion) => void;
  onFinish: () => void;
}

const MAIN = clsx(ui.buttonMain, styles.go);

/** What can be done while specimens are tested. What is typed is kept before anything is finished. */
export function RunBar({ job, specimen, entry, open, error, onAsk, onFinish }: Props) {
  const toKeep = open > 0 || entry?.dirty;
  if (job.state === 'paused') return <Resume job={job} />;
  return (
    <>
      <ErrorMessage error={error} />
      <button type="button" className={ui.button} onClick={() => onAsk('pause')}>
        Pause …
      </button>
      <button type="button" className={ui.buttonSharp} onClick={() => onAsk('block')}>
        Something failed …
      </button>
      {specimen && (
        <button
          type="button"
          className={ui.button}
          onClick={() => onAsk(specimen.fate === 'invalid' ? 'valid' : 'invalid')}
        >
          {shortLabel(specimen.label)} is {specimen.fate === 'invalid' ? 'valid after all' : 'invalid'} …
        </button>
      )}
      <button type="button" className={toKeep ? ui.button : MAIN} onClick={onFinish}>
        {open === 0 ? 'All done: finish' : `Finish …`}
      </button>
      {specimen && entry && toKeep && (
        <button type="submit" form={entry.formId} className={MAIN} disabled={entry.pending}>
          {entry.pending ? 'Saving …' : `Save ${shortLabel(specimen.label)}`}
        </button>
      )}
    </>
  );
}

function Resume({ job }: { job: JobView }) {
  const act = useJobAct(job.id);
  const [error, setError] = useState<Error | null>(null);
  const resume = () => act(api('POST /jobs/{id}/resume', { id: job.id })).catch((refused: Error) => setError(refused));
  return (
    <>
      <ErrorMessage error={error} />
      <button type="button" className={MAIN} onClick={() => void resume()}>
        Go on with {job.reference}
      </button>
    </>
  );
}
