import { useRef, useState } from 'react';
import type { CurveProposalView, JobView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { call, newIdempotencyKey } from '../../api-client/call.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { ui } from '../../ui/styles.js';
import { FormatConfirm } from './format-confirm.js';
import { useJobAct } from './sending.js';
import { isToBeTyped } from './typed-figures.js';
import type { Specimen } from './typed-figures.js';

interface Props {
  job: JobView;
  specimen: Specimen;
  onDone: () => void;
}

/** Takes the recorded curve of a specimen; a format that nobody has confirmed yet is shown first. */
export function CurveUpload({ job, specimen, onDone }: Props) {
  const { proposal, setProposal, error, busy, upload, confirm } = useUpload({ job, specimen, onDone });
  const input = useRef<HTMLInputElement>(null);
  async function send(file: File | undefined) {
    if (file) await upload(file);
    if (input.current) input.current.value = '';
  }
  return (
    <div className={ui.field}>
      <label htmlFor="curve-file">
        {specimen.curve
          ? `Curve saved, ${specimen.curve.rows} rows; another file replaces it`
          : 'Or the recorded curve, as a text file'}
      </label>
      <input
        id="curve-file"
        ref={input}
        type="file"
        accept=".csv,.txt,.tsv,.dat,text/plain,text/csv"
        disabled={busy}
        onChange={(event) => void send(event.target.files?.[0])}
      />
      {specimen.reading && <Reading reading={specimen.reading} />}
      <ErrorMessage error={error} />
      {proposal && (
        <FormatConfirm
          proposal={proposal}
          onClose={() => setProposal(null)}
          onConfirm={(format) => confirm(proposal, format)}
        />
      )}
    </div>
  );
}

function useUpload({ job, specimen, onDone }: Props) {
  const act = useJobAct(job.id);
  const ids = { id: job.id, sid: specimen.id };
  const [proposal, setProposal] = useState<CurveProposalView | null>(null);
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  async function confirm(found: CurveProposalView, format: Record<string, unknown>) {
    const body = { fileId: found.fileId, format };
    await act(api('POST /jobs/{id}/specimens/{sid}/curve/confirm', { ...ids, body }));
    setProposal(null);
    if (!isToBeTyped(job, specimen)) onDone();
  }
  async function upload(file: File) {
    setBusy(true);
    setError(null);
    try {
      const found = await call(api('POST /jobs/{id}/specimens/{sid}/curve', { ...ids, name: file.name, body: file }), {
        key: newIdempotencyKey(),
      });
      if (found.known && found.problems.length === 0) await confirm(found, found.format);
      else setProposal(found);
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
  }
  return { proposal, setProposal, error, busy, upload, confirm };
}

/** How far the worker is with the curve file. */
function Reading({ reading }: { reading: NonNullable<Specimen['reading']> }) {
  const failed = reading.state === 'failed';
  return (
    <p className={failed ? ui.noteAct : ui.note} role="status">
      {failed ? 'The file could not be read: ' : 'The curve is being read and reduced … '}
      {reading.message}
    </p>
  );
}
