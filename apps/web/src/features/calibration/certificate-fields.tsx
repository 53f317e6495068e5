import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import type { CalibrationTyped } from './calibration-typed.js';

const AS_FOUND = [
  { value: 'within', label: 'within tolerance' },
  { value: 'out-of-tolerance', label: 'out of tolerance' },
  { value: 'not-recorded', label: 'not recorded' },
];

/** What stands at the head of a certificate, and the certificate itself. */
export function CertificateFields({
  form,
  intervalMonths,
  onFile,
}: {
  form: LabForm<CalibrationTyped>;
  intervalMonths: number | null;
  onFile: (file: File | null) => void;
}) {
  return (
    <div className={ui.fields}>
      <FormText form={form} name="certificateNumber" label="Certificate number" />
      <FormText form={form} name="laboratory" label="Calibration laboratory" />
      <FormText form={form} name="standard" label="Standard" list={['ISO 7500-1', 'ISO 9513', 'ASTM E83']} />
      <FormText form={form} name="performedAt" label="Performed on" type="date" />
      <FormText
        form={form}
        name="dueAt"
        label="Due"
        type="date"
        required={false}
        help={`Left empty: ${intervalMonths ?? 12} months on.`}
      />
      <FormSelect
        form={form}
        name="asFound"
        label="As found"
        none="Choose …"
        choices={AS_FOUND}
        help="Before any adjustment. Out of tolerance: you are led to everything it touched."
      />
      <div className={ui.field}>
        <label htmlFor="certificate">Certificate as a file</label>
        <input id="certificate" type="file" onChange={(event) => onFile(event.target.files?.[0] ?? null)} />
      </div>
    </div>
  );
}
