import { useRef } from 'react';
import type { MaterialView, SaveMaterialBody } from '#libs/contract/src/index.js';
import type { MaterialGroup } from '#libs/matching/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormNumber } from '../../ui/form/form-number.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { FormTick } from '../../ui/form/form-ticks.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { useToast } from '../../ui/toasts.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { codeOf, fieldOf, materialBody, materialProblems, newBand } from './material-draft.js';
import type { MaterialDraft } from './material-draft.js';
import { StrengthBands } from './strength-bands.js';
import { ui } from '../../ui/styles.js';

const GROUPS: Record<MaterialGroup, true> = {
  ...{ metal: true, plastic: true, composite: true, elastomer: true, foam: true, concrete: true },
  ...{ wood: true, film: true, ceramic: true, adhesive: true, packaging: true, textile: true },
};
const GROUP_CHOICES = (Object.keys(GROUPS) as MaterialGroup[]).map((value) => ({ value, label: value }));
const CONFIDENCES = ['measured in this lab', 'read in the source', 'from memory'];
const EMPTY: MaterialDraft = {
  ...{ name: '', code: '', group: '', bands: [newBand('tensile')], brittle: false, source: '', confidence: '' },
  ...{ modulusLowGPa: '', modulusHighGPa: '', elongationLowPct: '', elongationHighPct: '' },
};

/** A material for the library: how strong it is found in practice, with its source. */
export function MaterialDialog({ onClose }: { onClose: () => void }) {
  const toast = useToast();
  const add = useApiMutation<MaterialView>(['methods']);
  const form = useLabForm<MaterialDraft>({
    initial: EMPTY,
    check: materialProblems,
    fieldOf,
    send: async (typed) => {
      const body: SaveMaterialBody = { data: materialBody(typed) };
      const { name } = await add.mutateAsync(api('POST /materials', { body }));
      toast(`${name} is in the library.`);
      onClose();
    },
  });
  return (
    <Dialog title="Add a material" onClose={onClose} wide>
      <FormFrame form={form} label="Material" sentByEnter={false}>
        <NameAndGroup form={form} />
        <StrengthBands form={form} />
        <StiffnessAndSource form={form} />
        <FormTick form={form} name="brittle" label="Breaks without warning and may throw fragments" />
        <div>
          <SubmitButton form={form}>Add to the library</SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}

interface Props {
  form: LabForm<MaterialDraft>;
}

/** The code follows the name until somebody writes another one. */
function NameAndGroup({ form }: Props) {
  const derived = useRef('');
  const { getValues, setValue } = form.hook;
  const nameCode = (name: string) => {
    if (getValues('code') === derived.current) setValue('code', (derived.current = codeOf(name)));
  };
  return (
    <div className={ui.fields}>
      <FormText form={form} name="name" label="Name" needed="Give it a name." onEdit={nameCode} />
      <FormText form={form} name="code" label="Code" help="Small letters, digits and dashes; it stays." required />
      <FormSelect
        form={form}
        name="group"
        label="Group"
        none="Choose …"
        choices={GROUP_CHOICES}
        needed="Choose a group."
      />
    </div>
  );
}

/** How stiff it is, how far it stretches, and who says so. */
function StiffnessAndSource({ form }: Props) {
  return (
    <div className={ui.fields}>
      <FormNumber form={form} name="modulusLowGPa" label="Modulus from" unit="GPa" required={false} />
      <FormNumber form={form} name="modulusHighGPa" label="Modulus up to" unit="GPa" required={false} />
      <FormNumber
        form={form}
        name="elongationLowPct"
        label="Elongation from"
        unit="%"
        help="At break, of the gauge length."
        required={false}
      />
      <FormNumber form={form} name="elongationHighPct" label="Elongation up to" unit="%" required={false} />
      <FormText
        form={form}
        name="source"
        label="Source"
        help="A handbook with its table, a data sheet, or your own tests."
        needed="Say where the figures come from."
      />
      <FormText
        form={form}
        name="confidence"
        label="How sure"
        list={CONFIDENCES}
        help="E.g. read in the source, or from memory."
        needed="Say how sure the figures are."
      />
    </div>
  );
}
