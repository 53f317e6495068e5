import { useWatch } from 'react-hook-form';
import { CALIBRATED_QUANTITIES } from '#libs/matching/src/index.js';
import { FormList } from '../../ui/form/form-list.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { UNIT_OF } from './calibration-typed.js';
import type { CalibrationTyped } from './calibration-typed.js';

const DIRECTIONS = CALIBRATED_QUANTITIES.map((value) => ({ value, label: value }));

/** Class and range as the certificate states them, without the readings behind them. */
export function StatedRanges({ form }: { form: LabForm<CalibrationTyped> }) {
  return (
    <FormList
      form={form}
      name="ranges"
      label="Ranges"
      fresh={{ direction: 'compression', className: '1', from: '', to: '' }}
      add="Another range"
      row={(at) => <Range form={form} at={at} />}
    />
  );
}

function Range({ form, at }: { form: LabForm<CalibrationTyped>; at: number }) {
  const unit = UNIT_OF[useWatch({ control: form.control, name: `ranges.${at}.direction` })] ?? '';
  return (
    <>
      <FormSelect form={form} name={`ranges.${at}.direction`} label="Of" choices={DIRECTIONS} />
      <FormText form={form} name={`ranges.${at}.className`} label="Class" required={false} />
      <FormText form={form} name={`ranges.${at}.from`} label={`From, ${unit}`} />
      <FormText form={form} name={`ranges.${at}.to`} label={`To, ${unit}`} />
    </>
  );
}
