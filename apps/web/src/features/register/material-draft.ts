import type { MaterialGroup, StrengthBand, StrengthProperty } from '#libs/matching/src/index.js';
import { figureIn } from '../../ui/form/form-number.js';

export interface BandDraft {
  property: StrengthProperty;
  unit: StrengthBand['unit'];
  low: string;
  typical: string;
  high: string;
}

/** A material as it is typed; figures are still text. */
export interface MaterialDraft {
  name: string;
  code: string;
  group: MaterialGroup | '';
  bands: BandDraft[];
  modulusLowGPa: string;
  modulusHighGPa: string;
  elongationLowPct: string;
  elongationHighPct: string;
  brittle: boolean;
  source: string;
  confidence: string;
}

/** In which unit the trade gives each strength. */
export const UNIT_OF: Record<StrengthProperty, StrengthBand['unit']> = {
  tensile: 'MPa',
  compressive: 'MPa',
  flexural: 'MPa',
  shear: 'MPa',
  peel: 'N/mm',
  tear: 'N/mm',
  toughness: 'MPa·√m',
};

export function newBand(property: StrengthProperty): BandDraft {
  return { property, unit: UNIT_OF[property], low: '', typical: '', high: '' };
}

/** A code made of a name: `Oak, along the grain` becomes `oak-along-the-grain`. */
export function codeOf(name: string): string {
  const plain = name.normalize('NFKD').toLowerCase().replace(/\p{M}/gu, '');
  return plain
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
}

/** What no field can tell alone, by the names of the fields: a highest figure that lies below the lowest. */
export function materialProblems(draft: MaterialDraft): Record<string, string> {
  const pairs = [
    ...draft.bands.map(({ low, high }, at) => ({ low, high, name: `bands.${at}.high` })),
    { low: draft.modulusLowGPa, high: draft.modulusHighGPa, name: 'modulusHighGPa' },
    { low: draft.elongationLowPct, high: draft.elongationHighPct, name: 'elongationHighPct' },
  ];
  const reversed = pairs.filter(({ low, high }) => (figureIn(high) ?? Infinity) < (figureIn(low) ?? -Infinity));
  return Object.fromEntries(reversed.map(({ name }) => [name, 'The highest lies below the lowest.']));
}

const FIELDS: Record<string, string> = {
  id: 'code',
  modulusMPa: 'modulusLowGPa',
  'modulusMPa.low': 'modulusLowGPa',
  'modulusMPa.high': 'modulusHighGPa',
  breakStrain: 'elongationLowPct',
  'breakStrain.low': 'elongationLowPct',
  'breakStrain.high': 'elongationHighPct',
};

/** The field of the form that a path of the register is about. */
export function fieldOf(path: string): string {
  const inData = path.replace(/^data\./, '');
  return FIELDS[inData] ?? inData.replace(/^strengths/, 'bands');
}

/** The data of the register: MPa, and strain as a fraction. What is left empty is left out. */
export function materialBody(draft: MaterialDraft): Record<string, unknown> {
  const { name, code, group, bands, brittle } = draft;
  const origin = { source: draft.source.trim(), confidence: draft.confidence.trim() };
  const strengths = bands.map(({ property, unit, low, typical, high }) => ({
    ...{ property, low: figureIn(low), typical: figureIn(typical), high: figureIn(high), unit },
    ...origin,
  }));
  const modulusMPa = bandIn(draft.modulusLowGPa, draft.modulusHighGPa, 1000);
  const breakStrain = bandIn(draft.elongationLowPct, draft.elongationHighPct, 0.01);
  return { id: code.trim(), name: name.trim(), group, strengths, modulusMPa, breakStrain, brittle, ...origin };
}

/** Both ends of a band in another unit; null where both are empty. */
function bandIn(low: string, high: string, factor: number) {
  const converted = (text: string) => {
    const value = figureIn(text);
    return value === undefined ? undefined : Number((value * factor).toPrecision(12));
  };
  if (low.trim() === '' && high.trim() === '') return null;
  return { low: converted(low), high: converted(high) };
}
