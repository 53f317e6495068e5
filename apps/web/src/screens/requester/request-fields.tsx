import type { TeamRef } from '#libs/contract/src/index.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { FormTick } from '../../ui/form/form-ticks.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { ConformityFields } from './conformity-fields.js';
import type { LimitedResult } from '../../features/requests/request-head.js';
import type { RequestDraft } from './request-draft.js';
import { DISPOSALS } from '../../features/requests/words.js';

interface Props {
  form: LabForm<RequestDraft>;
  conforms: boolean;
  teams: readonly TeamRef[];
  results: readonly LimitedResult[];
}

/** Title, team, due date, disposal and, if asked for, conformity. */
export function RequestFields({ form, conforms, teams, results }: Props) {
  return (
    <div className={ui.fields}>
      <FormText
        form={form}
        name="title"
        label="What do you want to find out?"
        called="The title"
        whole
        required
        placeholder="e.g. Tensile strength of steerer tubes, lot 7"
      />
      <FormText
        form={form}
        name="purpose"
        label="What for"
        called="The purpose"
        required={false}
        whole
        rows={2}
        help="It goes on the report and helps the lab to choose well."
      />
      <FormSelect
        form={form}
        name="teamId"
        label="Team"
        called="The team"
        choices={teams.map(({ id, name }) => ({ value: id, label: name }))}
        none={teams.length === 0 ? 'You are in no team' : 'Choose …'}
      />
      <FormText
        form={form}
        name="due"
        label="Due"
        called="The due date"
        required={false}
        type="date"
        help="End of that working day."
      />
      <FormSelect form={form} name="disposal" label="Specimens after the test" choices={DISPOSALS} />
      <FormTick
        form={form}
        name="conforms"
        label="State whether they conform to a specification"
        whole
        onEdit={() => form.hook.setValue('conformity.resultKey', results[0]?.key ?? '')}
      />
      {conforms && <ConformityFields form={form} results={results} />}
    </div>
  );
}
