import type { ItemView } from '#libs/contract/src/index.js';
import { ITEM_FIELDS, choiceWords } from '#libs/matching/src/index.js';
import type { ItemField } from '#libs/matching/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { asText, readPath } from './paths.js';
import { ui } from '../../ui/styles.js';

/** All fields of an item that say something, in the order of the form. */
export function FieldsView({ item }: { item: ItemView }) {
  const shown = ITEM_FIELDS[item.kind].filter(({ path }) => path !== 'state' && path !== 'tag' && path !== 'name');
  return (
    <dl className={ui.facts}>
      {item.serialNumber && (
        <>
          <dt>Serial number</dt>
          <dd className={ui.fig}>{item.serialNumber}</dd>
        </>
      )}
      {shown.map((field) => {
        const text = valueText(field, readPath(item, field.path));
        return (
          text && (
            <div key={field.path} style={{ display: 'contents' }}>
              <dt>{field.label}</dt>
              <dd>{text}</dd>
            </div>
          )
        );
      })}
    </dl>
  );
}

function valueText(field: ItemField, value: unknown): string {
  if (value === null || value === undefined || value === '') return '';
  const shownUnit = field.unit ?? field.fixedUnit;
  const unit = shownUnit ? ` ${shownUnit}` : '';
  switch (field.type) {
    case 'number':
      return `${formatNumber(Number(value))}${unit}`;
    case 'flag':
      return value ? 'yes' : 'no';
    case 'numbers':
      return `${(value as number[]).map((each) => formatNumber(each)).join(', ')}${unit}`;
    case 'choices':
      return (value as string[]).map(choiceWords).join(', ');
    case 'choice':
      return choiceWords(asText(value));
    case 'rating-curve':
      return (value as { temperatureC: number; rating: number }[])
        .map(({ temperatureC, rating }) => `${formatNumber(rating)}${unit} at ${temperatureC} °C`)
        .join(', ');
    case 'channels':
      return (value as { kind: string; count: number }[]).map(({ kind, count }) => `${count} ${kind}`).join(', ');
    case 'speed-limits':
      return (value as { aboveForceN: number; speedMaxMmPerMin: number }[])
        .map(
          ({ aboveForceN, speedMaxMmPerMin }) =>
            `above ${formatNumber(aboveForceN)} N ${formatNumber(speedMaxMmPerMin)} mm/min`,
        )
        .join(', ');
    default:
      return asText(value);
  }
}
