import { clsx } from 'clsx';
import { useFieldArray, useWatch } from 'react-hook-form';
import type { StrengthBand, StrengthProperty } from '#libs/matching/src/index.js';
import { FormNumber } from '../../ui/form/form-number.js';
import { FormSelect } from '../../ui/form/form-select.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { newBand, UNIT_OF } from './material-draft.js';
import type { MaterialDraft } from './material-draft.js';
import { ui } from '../../ui/styles.js';

const UNITS = (['MPa', 'N/mm', 'MPa·√m'] satisfies StrengthBand['unit'][]).map((value) => ({ value, label: value }));
const FIGURES = { low: 'Lowest', typical: 'Typical', high: 'Highest' } as const;

/** How strong a material is found, one band a kind of strength. */
export function StrengthBands({ form }: { form: LabForm<MaterialDraft> }) {
  const { fields, append, remove } = useFieldArray({ control: form.control, name: 'bands' });
  const bands = useWatch({ control: form.control, name: 'bands' });
  const free = (Object.keys(UNIT_OF) as StrengthProperty[]).filter((each) =>
    bands.every(({ property }) => property !== each),
  );
  return (
    <>
      {fields.map(({ id }, at) => (
        <Band
          key={id}
          form={form}
          at={at}
          property={bands[at]?.property ?? 'tensile'}
          free={free}
          onRemove={() => remove(at)}
        />
      ))}
      {free[0] && (
        <div>
          <button type="button" className={ui.button} onClick={() => append(newBand(free[0]!))}>
            Add another strength
          </button>
        </div>
      )}
    </>
  );
}

interface BandProps {
  form: LabForm<MaterialDraft>;
  at: number;
  property: StrengthProperty;
  /** The kinds of strength that no other band has. */
  free: readonly StrengthProperty[];
  onRemove: () => void;
}

function Band({ form, at, property, free, onRemove }: BandProps) {
  const choices = [property, ...free].map((value) => ({ value, label: value }));
  const setUnit = (chosen: string) => form.hook.setValue(`bands.${at}.unit`, UNIT_OF[chosen as StrengthProperty]);
  return (
    <fieldset className={clsx(ui.stack, ui.framed)}>
      <legend>{property} strength</legend>
      <div className={ui.fields}>
        <FormSelect form={form} name={`bands.${at}.property`} label="Strength" choices={choices} onEdit={setUnit} />
        {(['low', 'typical', 'high'] as const).map((key) => (
          <FormNumber key={key} form={form} name={`bands.${at}.${key}`} label={FIGURES[key]} required />
        ))}
        <FormSelect form={form} name={`bands.${at}.unit`} label="Unit" choices={UNITS} />
      </div>
      <div>
        <button
          type="button"
          className={ui.buttonSmall}
          aria-label={`Remove the ${property} strength`}
          onClick={onRemove}
        >
          Remove
        </button>
      </div>
    </fieldset>
  );
}
