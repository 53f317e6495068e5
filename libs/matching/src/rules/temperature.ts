import type { Item } from '../item.js';
import type { Needs } from '../needs.js';
import { allAdapters, atLeast, bothEnds, notBelow, reaches, told, worse, worst, worstEnd } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/**
 * Away from room temperature a chamber reaches it, fits the frame and takes the ends of the train, and everything inside is rated for
 * it. The cell stays outside. Ramp and soak come with the candidate.
 */
export const temperature: Rule = {
  code: 'temperature',
  source: 'item data; soak: common practice, no source',
  checks: [
    {
      sees: ['chamber'],
      judge({ chamber }, { needs }) {
        if (!needs.chamber) return null;
        const { value } = needs.temperature;
        if (!chamber) return told('fail', 'no-chamber', [], value, null, '°C');
        const { minC, maxC } = chamber.details;
        return worst([
          notBelow('too-cold', [chamber.id], value, minC, '°C'),
          atLeast('too-hot', [chamber.id], value, maxC, '°C'),
        ]);
      },
      passes: (_parts, { needs }) => !needs.chamber,
    },
    {
      sees: ['frame', 'chamber'],
      judge({ frame, chamber }) {
        if (!chamber) return null;
        const { columnClearanceMm } = frame.details;
        const { fitsClearanceMinMm, fitsClearanceMaxMm } = chamber.details;
        return worst([
          notBelow('chamber-too-wide', [chamber.id, frame.id], columnClearanceMm, fitsClearanceMinMm, 'mm'),
          atLeast('chamber-too-narrow', [chamber.id, frame.id], columnClearanceMm, fitsClearanceMaxMm, 'mm'),
        ]);
      },
      passes: ({ chamber }) => !chamber,
    },
    {
      sees: ['ends', 'chamber'],
      judge({ ends, chamber }, { needs }) {
        if (!chamber) return null;
        const widest = Math.max(ends.upper.details.outsideWidthMm, ends.lower.details.outsideWidthMm);
        const { insideWidthMm, insideHeightMm } = chamber.details;
        return worst([
          atLeast('too-wide-for-chamber', [ends.upper.id, chamber.id], widest, insideWidthMm, 'mm'),
          atLeast('too-tall-for-chamber', [chamber.id], insideMm(needs), insideHeightMm, 'mm'),
        ]);
      },
      passes({ ends, chamber }, { needs }) {
        if (!chamber) return true;
        const { insideWidthMm, insideHeightMm } = chamber.details;
        return (
          reaches(insideWidthMm, ends.upper.details.outsideWidthMm) &&
          reaches(insideWidthMm, ends.lower.details.outsideWidthMm) &&
          reaches(insideHeightMm, insideMm(needs))
        );
      },
      otherwise: 'fail',
    },
    {
      sees: ['ends'],
      judge: ({ ends }, context) => worstEnd(ends, (item) => rated(item, context)),
      passes: ({ ends }, context) => bothEnds(ends, context, isRated),
      otherwise: 'fail',
    },
    {
      sees: ['adapters'],
      judge: ({ adapters }, context) =>
        worst([...adapters.upper, ...adapters.lower].map((item) => rated(item, context))),
      passes: ({ adapters }, context) => allAdapters(adapters, context, isRated),
      otherwise: 'fail',
    },
    {
      sees: ['faces'],
      judge: ({ faces }, context) => faces && rated(faces, context),
      passes: ({ faces }, context) => !faces || isRated(faces, context),
      otherwise: 'fail',
    },
    {
      sees: ['extensometer'],
      judge: ({ extensometer }, context) => extensometer && rated(extensometer, context),
      passes: ({ extensometer }, context) => !extensometer || isRated(extensometer, context),
      otherwise: 'fail',
    },
    {
      sees: ['thermocouple'],
      judge: ({ thermocouple }, { needs }) =>
        needs.chamber && !thermocouple ? told('caution', 'no-thermocouple', []) : null,
      passes: ({ thermocouple }, { needs }) => !needs.chamber || thermocouple !== null,
      otherwise: 'caution',
    },
  ],
};

/** Height that specimen and travel take inside a chamber, mm. */
function insideMm({ specimen, direction, travel }: Needs): number {
  return specimen.freeLengthMm + (direction === 'tension' ? travel.value : 0);
}

function rated(item: Item, { needs }: Context): Finding | null {
  const { value } = needs.temperature;
  const items = [item.id];
  return worse(
    notBelow('item-too-cold', items, value, item.temperatureMinC, '°C'),
    atLeast('item-too-hot', items, value, item.temperatureMaxC, '°C'),
  );
}

function isRated({ temperatureMinC, temperatureMaxC }: Item, { needs }: Context): boolean {
  const { value } = needs.temperature;
  return reaches(value, temperatureMinC) && reaches(temperatureMaxC, value);
}
