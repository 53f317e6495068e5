import { useFieldArray, useWatch } from 'react-hook-form';
import { FormCell } from '../../ui/form/form-cell.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import type { CalibrationTyped } from './calibration-typed.js';
import styles from './readings.module.css';

const DIRECTIONS = (['tension', 'compression', 'torque'] as const).map((value) => ({ value, label: value }));
const HELD = [
  { value: 'indicated', label: 'the indicated force' },
  { value: 'true', label: 'the true force' },
];
const RUNS = [0, 1, 2] as const;

interface Props {
  form: LabForm<CalibrationTyped>;
  /** Which of the directions. */
  at: number;
}

/** Three runs per step, as ISO 7500-1 asks: of true forces at an indication, or of indications at a true force. */
export function ForceReadings({ form, at }: Props) {
  const unit = useWatch({ control: form.control, name: `force.${at}.unit` });
  return (
    <div className={ui.stack}>
      <div className={ui.fields}>
        <FormSelect form={form} name={`force.${at}.direction`} label="Direction" choices={DIRECTIONS} />
        <FormText form={form} name={`force.${at}.unit`} label="Unit" />
        <FormSelect
          form={form}
          name={`force.${at}.held`}
          label="Held at each step"
          help="The other one is what the runs read."
          choices={HELD}
        />
        <FormText form={form} name={`force.${at}.capacity`} label={`Capacity, ${unit}`} />
        <FormText form={form} name={`force.${at}.resolution`} label={`Resolution, ${unit}`} />
        <FormText form={form} name={`force.${at}.zeroResidual`} label={`Left at zero, ${unit}`} />
      </div>
      <Steps form={form} at={at} unit={unit} />
    </div>
  );
}

function Steps({ form, at, unit }: Props & { unit: string }) {
  const held = useWatch({ control: form.control, name: `force.${at}.held` });
  const { fields, append } = useFieldArray({ control: form.control, name: `force.${at}.steps` });
  const [kept, read] = held === 'indicated' ? ['Indicated', 'True force'] : ['True force', 'Indicated'];
  return (
    <>
      <div className={ui.scrollX}>
        <table className={styles.readings}>
          <thead>
            <tr>
              <th>
                {kept}, {unit}
              </th>
              {RUNS.map((run) => (
                <th key={run}>
                  {read} in run {run + 1}
                </th>
              ))}
              <th>Falling, if measured</th>
            </tr>
          </thead>
          <tbody>
            {fields.map(({ id }, step) => (
              <StepRow key={id} form={form} at={at} step={step} kept={kept} />
            ))}
          </tbody>
        </table>
      </div>
      <div>
        <button
          type="button"
          className={ui.buttonSmall}
          onClick={() => append({ nominal: '', runs: ['', '', ''], falling: '' })}
        >
          Another step
        </button>
      </div>
    </>
  );
}

function StepRow({ form, at, step, kept }: Props & { step: number; kept: string }) {
  const name = `force.${at}.steps.${step}` as const;
  const label = `Step ${step + 1}`;
  return (
    <tr>
      <td>
        <FormCell form={form} name={`${name}.nominal`} label={`${label}, ${kept.toLowerCase()}`} />
      </td>
      {RUNS.map((run) => (
        <td key={run}>
          <FormCell form={form} name={`${name}.runs.${run}`} label={`${label}, run ${run + 1}`} />
        </td>
      ))}
      <td>
        <FormCell form={form} name={`${name}.falling`} label={`${label}, falling`} />
      </td>
    </tr>
  );
}
