import { clsx } from 'clsx';
import { useEffect } from 'react';
import { useWatch } from 'react-hook-form';
import type { JobView } from '#libs/contract/src/index.js';
import { FormFrame } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { CurveUpload } from './curve-upload.js';
import { KeptResults } from './kept-results.js';
import { Readings } from './readings.js';
import { ResultInput } from './result-input.js';
import { isCorrected, isTyped, useSpecimenForm } from './specimen-form.js';
import { resultsToType } from './typed-figures.js';
import type { Specimen, TypedFigures } from './typed-figures.js';
import styles from './bench.module.css';

/** How it is with the form, for the buttons of the bar below. */
export interface EntryState {
  formId: string;
  pending: boolean;
  /** Something is typed that is not kept. */
  dirty: boolean;
}

/** What is measured and found on one specimen. */
export function SpecimenEntry({
  job,
  specimen,
  onDone,
  onState,
}: {
  job: JobView;
  specimen: Specimen;
  onDone: () => void;
  onState: (state: EntryState | null) => void;
}) {
  const form = useSpecimenForm(job, specimen, onDone);
  const { id: formId, pending, dirty } = form;
  useEffect(() => onState({ formId, pending, dirty }), [onState, formId, pending, dirty]);
  useEffect(() => () => onState(null), [onState]);
  return (
    <FormFrame form={form} className={styles.run} label={specimen.label}>
      <div className={ui.stack}>
        <SpecimenHead specimen={specimen} />
        {job.dimensionsNeeded.map((need) => (
          <Readings key={need.key} form={form} need={need} />
        ))}
        <CurveUpload job={job} specimen={specimen} onDone={() => !isTyped(job, specimen) && onDone()} />
      </div>
      <div className={ui.stack}>
        {resultsToType(job).map((need) => (
          <ResultInput key={need.key} form={form} need={need} />
        ))}
        {isCorrected(specimen) && <WhyCorrected form={form} />}
        {dirty && <NotKept form={form} />}
        {specimen.results.length > 0 && <KeptResults specimen={specimen} />}
      </div>
    </FormFrame>
  );
}

function SpecimenHead({ specimen }: { specimen: Specimen }) {
  return (
    <h2>
      <span className={ui.fig}>{specimen.label}</span>{' '}
      {specimen.invalidWhy ? (
        <span className={ui.act}>invalid: {specimen.invalidWhy}</span>
      ) : (
        <span className={ui.soft}>{specimen.condition}</span>
      )}
    </h2>
  );
}

/** Asked for as soon as a result is typed in place of one that is kept. */
function WhyCorrected({ form }: { form: LabForm<TypedFigures> }) {
  const results = useWatch({ control: form.control, name: 'results' });
  if (!Object.values(results).some((text) => text.trim())) return null;
  return <FormText form={form} name="why" label="Why the result is corrected" required />;
}

function NotKept({ form }: { form: LabForm<TypedFigures> }) {
  return (
    <p className={clsx(ui.row, ui.small)}>
      <span>Typed, and not saved yet.</span>
      <button type="button" className={ui.buttonSmall} onClick={form.discard}>
        Throw it away
      </button>
    </p>
  );
}
