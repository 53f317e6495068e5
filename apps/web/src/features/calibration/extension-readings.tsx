import { FormCell } from '../../ui/form/form-cell.js';
import { FormText } from '../../ui/form/form-text.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import type { CalibrationTyped } from './calibration-typed.js';
import { EXTENSION_STEPS } from './readings.js';
import styles from './readings.module.css';

const RUNS = [0, 1] as const;

/** Reference displacement and two runs per step, as ISO 9513 asks, in mm. */
export function ExtensionReadings({ form }: { form: LabForm<CalibrationTyped> }) {
  return (
    <div className={ui.stack}>
      <div className={ui.fields}>
        <FormText form={form} name="extension.gaugeNominal" label="Gauge length, nominal, mm" />
        <FormText form={form} name="extension.gaugeMeasured" label="Gauge length, measured, mm" />
        <FormText form={form} name="extension.resolution" label="Resolution, mm" />
      </div>
      <table className={styles.readings}>
        <thead>
          <tr>
            <th>Reference, mm</th>
            <th>Run 1</th>
            <th>Run 2</th>
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: EXTENSION_STEPS }, (_, step) => (
            <tr key={step}>
              <td>
                <FormCell
                  form={form}
                  name={`extension.steps.${step}.reference`}
                  label={`Step ${step + 1}, reference`}
                />
              </td>
              {RUNS.map((run) => (
                <td key={run}>
                  <FormCell
                    form={form}
                    name={`extension.steps.${step}.runs.${run}`}
                    label={`Step ${step + 1}, run ${run + 1}`}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
