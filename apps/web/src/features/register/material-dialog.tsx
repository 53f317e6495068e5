import { clsx } from 'clsx';
import { useState } from 'react';
import type { MaterialView, SaveMaterialBody } from '#libs/contract/src/index.js';
import type { MaterialGroup, StrengthBand, StrengthProperty } from '#libs/matching/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick } from '../../ui/fields/ticks.js';
import { useToast } from '../../ui/toasts.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { codeOf, materialBody, newBand, UNIT_OF } from './material-draft.js';
import type { BandDraft, MaterialDraft } from './material-draft.js';
import { ui } from '../../ui/styles.js';

const GROUPS: Record<MaterialGroup, true> = {
  ...{ metal: true, plastic: true, composite: true, elastomer: true, foam: true, concrete: true },
  ...{ wood: true, film: true, ceramic: true, adhesive: true, packaging: true, textile: true },
};
const UNITS: readonly StrengthBand['unit'][] = ['MPa', 'N/mm', 'MPa·√m'];
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
  const text = (key: TextKey, path: string) => ({
    value: draft[key],
    onChange: (value: string) => set({ [key]: value }),
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
      <Bands bands={draft.bands} onChange={(bands) => set({ bands })} wrong={wrong} />
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

type TextKey = {
  [Key in keyof MaterialDraft]: MaterialDraft[Key] extends string
    ? string extends MaterialDraft[Key]
      ? Key
      : never
    : never;
}[keyof MaterialDraft];

function Bands({
  bands,
  onChange,
  wrong,
}: {
  bands: readonly BandDraft[];
  onChange: (bands: BandDraft[]) => void;
  wrong: Readonly<Record<string, string>>;
}) {
  const change = (at: number, part: Partial<BandDraft>) =>
    onChange(bands.map((band, index) => (index === at ? { ...band, ...part } : band)));
  const free = (Object.keys(UNIT_OF) as StrengthProperty[]).filter((each) =>
    bands.every((band) => band.property !== each),
  );
  return (
    <>
      {bands.map((band, at) => (
        <fieldset key={at} className={clsx(ui.stack, ui.framed)}>
          <legend>{band.property} strength</legend>
          <div className={ui.fields}>
            <SelectField
              label="Strength"
              value={band.property}
              onChange={(chosen) => {
                const property = chosen;
                change(at, { property, unit: UNIT_OF[property] });
              }}
              choices={[band.property, ...free].map((value) => ({ value, label: value }))}
            />
            {(['low', 'typical', 'high'] as const).map((key) => (
              <TextField
                key={key}
                label={FIGURES[key]}
                value={band[key]}
                onChange={(typed) => change(at, { [key]: typed })}
                wrong={wrong[`data.strengths[${at}].${key}`]}
              />
            ))}
            <SelectField
              label="Unit"
              value={band.unit}
              onChange={(unit) => change(at, { unit: unit })}
              choices={UNITS.map((value) => ({ value, label: value }))}
              wrong={wrong[`data.strengths[${at}].unit`]}
            />
          </div>
          <div>
            <button
              type="button"
              className={clsx(ui.button, ui.buttonSmall)}
              aria-label={`Remove the ${band.property} strength`}
              onClick={() => onChange(bands.filter((_, index) => index !== at))}
            >
              Remove
            </button>
          </div>
        </fieldset>
      ))}
      {free[0] && (
        <div>
          <button type="button" className={ui.button} onClick={() => onChange([...bands, newBand(free[0]!)])}>
            Add another strength
          </button>
        </div>
      )}
    </>
  );
}

const FIGURES = { low: 'Lowest', typical: 'Typical', high: 'Highest' } as const;
