import type { InvalidBody, JobView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { BlockDialog } from './block-dialog.js';
import { useJobAct } from './sending.js';
import type { Specimen } from './typed-figures.js';
import { WhyDialog } from './why-dialog.js';

export type RunQuestion = 'pause' | 'block' | 'invalid' | 'valid';

interface Props {
  job: JobView;
  specimen: Specimen | undefined;
  asking: RunQuestion | null;
  onClose: () => void;
  /** The specimen needs nothing more. */
  onSettled: () => void;
}

/** Asks for the reason of what interrupts a run or changes whether a specimen counts. */
export function RunDialogs({ job, specimen, asking, onClose, onSettled }: Props) {
  const act = useJobAct(job.id);
  if (asking === 'block') return <BlockDialog job={job} onClose={onClose} />;
  if (asking === 'pause')
    return (
      <WhyDialog
        title="Pause"
        explain="The job stays yours and the train stays on the frame."
        button="Pause"
        usual={['Break', 'End of shift', 'Waiting for help']}
        onWhy={(why) => act(api('POST /jobs/{id}/pause', { id: job.id, body: { why } }))}
        onClose={onClose}
      />
    );
  if (!asking || !specimen) return null;
  return <FateDialog key={asking} {...{ job, specimen, asking, onClose, onSettled }} />;
}

function FateDialog({
  job,
  specimen: { id: sid, label },
  asking,
  onClose,
  onSettled,
}: Props & { specimen: Specimen; asking: 'invalid' | 'valid' }) {
  const act = useJobAct(job.id);
  const mark = (body: InvalidBody) => act(api('POST /jobs/{id}/specimens/{sid}/invalid', { id: job.id, sid, body }));
  if (asking === 'valid')
    return (
      <WhyDialog
        title={`${label} is valid after all`}
        explain="Its results count again. The record keeps both reasons."
        button={`Let ${label} count again`}
        usual={['Marked by mistake']}
        onWhy={(why) => mark({ why, fate: 'valid' })}
        onClose={onClose}
      />
    );
  return (
    <WhyDialog
      title={`${label} is invalid`}
      explain="It stays in the record and on the report with this reason, and counts in no statistics."
      button={`Mark ${label} as invalid`}
      usual={['Broke in the grip', 'Slipped', 'Flaw seen before the test', 'Wrong speed']}
      onWhy={(why) => mark({ why }).then(onSettled)}
      onClose={onClose}
    />
  );
}
