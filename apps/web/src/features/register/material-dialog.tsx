import { useState } from 'react';
import type { MaterialView, SaveMaterialBody } from '#libs/contract/src/index.js';
import type { MaterialGroup } from '#libs/matching/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick } from '../../ui/fields/ticks.js';
import { useToast } from '../../ui/toasts.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { codeOf, materialBody, newBand } from './material-draft.js';
import type { MaterialDraft } from './material-draft.js';
import { StrengthBands } from './strength-bands.js';
import { ui } from '../../ui/styles.js';

const GROUPS: Record<MaterialGroup, true> = {
  ...{ metal: true, plastic: true, composite: true, elastomer: true, foam: true, concrete: true },
  ...{ wood: true, film: true, ceramic: true, adhesive: true, packaging: true, textile: true },
};
const CONFIDENCES = ['measured in this lab', 'read in the source', 'from memory'];
const EMPTY: MaterialDraft = {
  ...{ name: '', code: '', group: '', bands: [newBand('tensile')], brittle: false, source: '', confidence: '' },
  ...{ modulusLowGPa: '', modulusHighGPa: '', elongationLowPct: '', elongationHighPct: '' },
};

/** A material for the library: how strong it is found in practice, with its source. */
export function MaterialDialog({ onClose }: { onClose: () => void }) {
  const toast = useToast();
  const [draft, setDraft] = useState<MaterialDraft>(EMPTY);
  const [unread, setUnread] = useState<Record<string, string>>({});
  const add = useApiMutation<MaterialView>(['methods'], ({ name }) => {
    toast(`${name} is in the library.`);
    onClose();
  });
  const wrong = { ...(add.error instanceof ApiError ? add.error.fields : {}), ...unread };
  const set = (part: Partial<MaterialDraft>) => setDraft({ ...draft, ...part });
  const text: TextProps = (key, path) => ({
    value: draft[key],
    onChange: (value) => set({ [key]: value }),
    wrong: wrong[`data.${path}`],
  });
  function send() {
    const { data, problems } = materialBody(draft);
    setUnread(problems);
    if (Object.keys(problems).length > 0) return;
    add.mutate(api('POST /materials', { body: { data } satisfies SaveMaterialBody }));
  }
  return (
    <Dialog title="Add a material" onClose={onClose} wide>
      <div className={ui.fields}>
        <TextField
          label="Name"
          {...text('name', 'name')}
          onChange={(name) => set({ name, ...(draft.code === codeOf(draft.name) ? { code: codeOf(name) } : {}) })}
        />
        <TextField label="Code" help="Small letters, digits and dashes; it stays." {...text('code', 'id')} />
        <SelectField
          label="Group"
          none="Choose …"
          value={draft.group}
          onChange={(group) => set({ group })}
          choices={(Object.keys(GROUPS) as MaterialGroup[]).map((value) => ({ value, label: value }))}
          wrong={wrong['data.group']}
        />
      </div>
      <StrengthBands bands={draft.bands} onChange={(bands) => set({ bands })} wrong={wrong} />
      <StiffnessAndSource text={text} />
      <Tick
        label="Breaks without warning and may throw fragments"
        checked={draft.brittle}
        onChange={(brittle) => set({ brittle })}
      />
      <ErrorMessage error={add.error} />
      <div>
        <button type="button" className={ui.buttonMain} disabled={add.isPending} onClick={send}>
          Add to the library
        </button>
      </div>
    </Dialog>
  );
}

type TextProps = (
  key: TextKey,
  path: string,
) => { value: string; onChange: (value: string) => void; wrong: string | undefined };

type TextKey = {
  [Key in keyof MaterialDraft]: MaterialDraft[Key] extends string
    ? string extends MaterialDraft[Key]
      ? Key
      : never
    : never;
}[keyof MaterialDraft];

/** How stiff it is, how far it stretches, and who says so. */
function StiffnessAndSource({ text }: { text: TextProps }) {
  return (
    <div className={ui.fields}>
      <TextField label="Modulus from, GPa" required={false} {...text('modulusLowGPa', 'modulusMPa.low')} />
      <TextField label="Modulus up to, GPa" required={false} {...text('modulusHighGPa', 'modulusMPa.high')} />
      <TextField
        label="Elongation from, %"
        help="At break, of the gauge length."
        required={false}
        {...text('elongationLowPct', 'breakStrain.low')}
      />
      <TextField label="Elongation up to, %" required={false} {...text('elongationHighPct', 'breakStrain.high')} />
      <TextField
        label="Source"
        help="A handbook with its table, a data sheet, or your own tests."
        {...text('source', 'source')}
      />
      <TextField
        label="How sure"
        list={CONFIDENCES}
        help="E.g. read in the source, or from memory."
        {...text('confidence', 'confidence')}
      />
    </div>
  );
}
