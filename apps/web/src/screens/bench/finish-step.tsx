import { clsx } from 'clsx';
import type { JobView } from '#libs/contract/src/index.js';
import { BenchFrame } from '../../features/bench/bench-frame.js';
import { openOf, unexplainedOf, useFinishForm } from '../../features/bench/finish-form.js';
import type { Finishing, Unexplained } from '../../features/bench/finish-form.js';
import { shortLabel } from '../../features/bench/specimen-tabs.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormNumber } from '../../ui/form/form-number.js';
import { FormText } from '../../ui/form/form-text.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/bench/bench.module.css';

interface Props {
  job: JobView;
  onBack: () => void;
}

/** Conditions, remarks and reasons, then the end: what is on the frame becomes its rig. */
export function FinishStep({ job, onBack }: Props) {
  const form = useFinishForm(job);
  const unexplained = unexplainedOf(job);
  return (
    <BenchFrame job={job} step="finish" bar={<FinishBar job={job} form={form} onBack={onBack} />}>
      <FormFrame form={form} className={clsx(ui.stackWide, styles.narrow)} label={`Finish ${job.reference}`}>
        <p className={ui.note}>
          {countsOf(job)}. What is fitted on {job.frame?.tag} stays there as its rig.
        </p>
        {unexplained.length > 0 && <Missing form={form} unexplained={unexplained} />}
        <div className={ui.fields}>
          <NotTested job={job} form={form} />
          <FormNumber form={form} name="temperature" label="Room temperature" unit="°C" min={-200} max={1200} />
          <FormNumber form={form} name="humidity" label="Relative humidity" unit="%" min={0} max={100} />
          <FormText form={form} name="remarks" label="Remarks" required={false} whole rows={2} />
          <FormText
            form={form}
            name="deviations"
            label="Deviations from the method"
            required={false}
            whole
            rows={2}
            help="They are stated on the report."
          />
        </div>
      </FormFrame>
    </BenchFrame>
  );
}

function FinishBar({ job, form, onBack }: Props & { form: LabForm<Finishing> }) {
  return (
    <>
      <button type="button" className={ui.button} onClick={onBack}>
        Back to the specimens
      </button>
      <SubmitButton form={form} className={clsx(ui.buttonMain, styles.go)}>
        Finish {job.reference}
      </SubmitButton>
    </>
  );
}

/** A reason for each result that was asked for and has no figure. */
function Missing({ form, unexplained }: { form: LabForm<Finishing>; unexplained: readonly Unexplained[] }) {
  return (
    <section className={ui.stackTight} aria-label="Results that are missing">
      <p className={ui.noteAct}>
        Results that were asked for are missing. Go back and enter them, or say why there are none: the reason stands on
        the report.
      </p>
      {unexplained.map(({ key, label, hint, specimens }) => (
        <FormText
          key={key}
          form={form}
          name={`missing.${key}`}
          label={`Why there is no ${label} of ${specimens.map((each) => shortLabel(each.label)).join(', ')}`}
          help={hint}
          needed={`Say why there is no ${label}, or go back and enter it.`}
        />
      ))}
    </section>
  );
}

function NotTested({ job, form }: { job: JobView; form: LabForm<Finishing> }) {
  const open = openOf(job);
  if (open === 0) return null;
  const label = `Why ${open} ${open === 1 ? 'specimen is' : 'specimens are'} not tested`;
  return <FormText form={form} name="notTestedWhy" label={label} whole needed="Say why, or go back and test them." />;
}

function countsOf({ specimens }: JobView): string {
  const count = (fate: string) => specimens.filter((specimen) => specimen.fate === fate).length;
  const [tested, invalid] = [count('tested'), count('invalid')];
  return `${tested} tested, ${invalid} invalid, ${specimens.length - tested - invalid} not tested`;
}
