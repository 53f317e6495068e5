import { useWatch } from 'react-hook-form';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import type { LimitedResult } from '../../features/requests/request-head.js';
import type { RequestDraft } from './request-draft.js';

const JUDGED_ON = [
  { value: 'each', label: 'each specimen' },
  { value: 'mean', label: 'the mean' },
] as const;
const RULES = [
  { value: 'simple', label: 'simple acceptance' },
  { value: 'guarded', label: 'guarded by the uncertainty' },
] as const;

/** Which limits the results are held against, and by which rule. */
export function ConformityFields({
  form,
  results,
}: {
  form: LabForm<RequestDraft>;
  results: readonly LimitedResult[];
}) {
  const resultKey = useWatch({ control: form.control, name: 'conformity.resultKey' });
  const unit = results.find(({ key }) => key === resultKey)?.unit;
  const inUnit = (label: string) => (unit ? `${label}, ${unit}` : label);
  return (
    <>
      <FormText
        form={form}
        name="conformity.specification"
        label="Specification"
        called="The specification"
        placeholder="e.g. NC drawing 4410, note 6"
      />
      <FormSelect
        form={form}
        name="conformity.resultKey"
        label="Which result"
        called="The result"
        none="Choose a method first"
        choices={results.map(({ key, label }) => ({ value: key, label }))}
      />
      <FormText
        form={form}
        name="conformity.lower"
        label={inUnit('At least')}
        called="The lower limit"
        required={false}
      />
      <FormText
        form={form}
        name="conformity.upper"
        label={inUnit('At most')}
        called="The upper limit"
        required={false}
      />
      <FormSelect form={form} name="conformity.of" label="Judged on" choices={JUDGED_ON} />
      <FormSelect
        form={form}
        name="conformity.rule"
        label="Decision rule"
        choices={RULES}
        help="Agreed with the lab before work begins (ISO/IEC 17025:2017, 7.1.3)."
      />
    </>
  );
}
