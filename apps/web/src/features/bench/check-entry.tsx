import type { BenchCheckView, JobView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormNumber, figureIn } from '../../ui/form/form-number.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useJobAct } from './sending.js';
import { ShiftCheck } from './shift-check.js';
import styles from './bench.module.css';

interface Props {
  job: JobView;
  check: BenchCheckView;
}

/** What the check that is due asks for: a tick, a reading, or the shift check of the cell. */
export function CheckEntry({ job, check }: Props) {
  return (
    <div className={styles.checkEntry}>
      {check.kind === 'shift-check' ? <ShiftCheck job={job} /> : <Done job={job} check={check} />}
    </div>
  );
}

function Done({ job, check: { key, kind, unit } }: Props) {
  const act = useJobAct(job.id);
  const form = useLabForm({
    initial: { value: '' },
    send: ({ value }) => {
      const read = kind === 'value' ? { value: figureIn(value) } : {};
      return act(api('POST /jobs/{id}/tick', { id: job.id, body: { key, ...read } }));
    },
  });
  return (
    <FormFrame form={form} className={ui.rowEnd}>
      {kind === 'value' && <FormNumber form={form} name="value" label="Reading" unit={unit ?? ''} required />}
      <SubmitButton form={form}>Done</SubmitButton>
    </FormFrame>
  );
}
