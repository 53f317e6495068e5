import type { MaterialGroup, StrengthBand, StrengthProperty } from '#libs/matching/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';

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

const WANTED = {
  name: 'Give it a name.',
  group: 'Choose a group.',
  source: 'Say where the figures come from.',
  confidence: 'Say how sure the figures are.',
} as const;

/** The body for the register, and what is missing or cannot be read as a figure, by the paths that the register uses too. */
export function materialBody(draft: MaterialDraft): {
  data: Record<string, unknown>;
  problems: Record<string, string>;
} {
  const problems: Record<string, string> = {};
  for (const [key, sentence] of Object.entries(WANTED))
    if (draft[key as keyof typeof WANTED].trim() === '') problems[`data.${key}`] = sentence;
  const read = (path: string, text: string, factor = 1): number | undefined => {
    if (text.trim() === '') return undefined;
    const parsed = parseNumber(text);
    if ('value' in parsed) return Number((parsed.value * factor).toPrecision(12));
    problems[path] = parsed.reason;
    return undefined;
  };
  const band = (path: string, low: string, high: string, factor: number) => {
    if (low.trim() === '' && high.trim() === '') return null;
    const found = { low: read(`${path}.low`, low, factor), high: read(`${path}.high`, high, factor) };
    if (found.low !== undefined && found.high !== undefined && found.high < found.low)
      problems[`${path}.high`] = 'The highest lies below the lowest.';
    return found;
  };
  const { name, code, group, bands, brittle } = draft;
  const origin = { source: draft.source.trim(), confidence: draft.confidence.trim() };
  const strengths = bands.map(({ property, unit, ...typed }, at) => {
    const figure = (key: 'low' | 'typical' | 'high') => read(`data.strengths[${at}].${key}`, typed[key]);
    return { property, low: figure('low'), typical: figure('typical'), high: figure('high'), unit, ...origin };
  });
  const modulusMPa = band('data.modulusMPa', draft.modulusLowGPa, draft.modulusHighGPa, 1000);
  const breakStrain = band('data.breakStrain', draft.elongationLowPct, draft.elongationHighPct, 0.01);
  const data = { id: code.trim(), name: name.trim(), group, strengths, modulusMPa, breakStrain, brittle, ...origin };
  return { data, problems };
}
