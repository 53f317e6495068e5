import { clsx } from 'clsx';
import type { StrengthBand, StrengthProperty } from '#libs/matching/src/index.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { newBand, UNIT_OF } from './material-draft.js';
import type { BandDraft } from './material-draft.js';
import { ui } from '../../ui/styles.js';

const UNITS: readonly StrengthBand['unit'][] = ['MPa', 'N/mm', 'MPa·√m'];
const FIGURES = { low: 'Lowest', typical: 'Typical', high: 'Highest' } as const;

/** How strong a material is found, one band a kind of strength. */
export function StrengthBands({
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
        <Band
          key={at}
          band={band}
          free={free}
          wrong={(part) => wrong[`data.strengths[${at}].${part}`]}
          onChange={(part) => change(at, part)}
          onRemove={() => onChange(bands.filter((_, index) => index !== at))}
        />
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

function Band({
  band,
  free,
  wrong,
  onChange,
  onRemove,
}: {
  band: BandDraft;
  /** The kinds of strength that no other band has. */
  free: readonly StrengthProperty[];
  wrong: (part: string) => string | undefined;
  onChange: (part: Partial<BandDraft>) => void;
  onRemove: () => void;
}) {
  return (
    <fieldset className={clsx(ui.stack, ui.framed)}>
      <legend>{band.property} strength</legend>
      <div className={ui.fields}>
        <SelectField
          label="Strength"
          value={band.property}
          onChange={(chosen) => {
            const property = chosen;
            onChange({ property, unit: UNIT_OF[property] });
          }}
          choices={[band.property, ...free].map((value) => ({ value, label: value }))}
        />
        {(['low', 'typical', 'high'] as const).map((key) => (
          <TextField
            key={key}
            label={FIGURES[key]}
            value={band[key]}
            onChange={(typed) => onChange({ [key]: typed })}
            wrong={wrong(key)}
          />
        ))}
        <SelectField
          label="Unit"
          value={band.unit}
          onChange={(unit) => onChange({ unit: unit })}
          choices={UNITS.map((value) => ({ value, label: value }))}
          wrong={wrong('unit')}
        />
      </div>
      <div>
        <button
          type="button"
          className={clsx(ui.button, ui.buttonSmall)}
          aria-label={`Remove the ${band.property} strength`}
          onClick={onRemove}
        >
          Remove
        </button>
      </div>
    </fieldset>
  );
}
