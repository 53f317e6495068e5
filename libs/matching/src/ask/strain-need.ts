import { assumed, declared, figure } from './figure.js';
import type { Figure, StrainNeed } from './needs.js';
import { strainsRead } from './strains-read.js';
import type { StrainFacts, StrainsRead } from './strains-read.js';

/** Gauge length where neither request nor method names one, mm. */
const ANY_GAUGE_MM = 50;

/** Whether strain is measured, how, and what the extensometer must do for the results that are wanted. */
export function strainNeed(facts: StrainFacts): StrainNeed {
  const { ask, method } = facts;
  const rule = method.strain;
  const wants = (keys: readonly string[]) => ask.results.some((each) => keys.includes(each));
  const demanded = rule !== null && wants(rule.demandedFor);
  const preferred = rule !== null && wants(rule.preferredFor);
  const without = { ...NO_EXTENSOMETER, contactAllowed: ask.options.contactExtensometer };
  if (!rule || (!demanded && !preferred)) return { ...without, how: 'none', rule: null };
  if (!demanded && ask.options.crossheadStrain) return { ...without, how: 'crosshead', rule };
  const read = strainsRead(facts);
  const gaugeLength = rule.measures === 'axial' ? gauge(facts, rule.usualGaugeLengthMm) : null;
  const length = gaugeLength ? over(gaugeLength) : deflectionLength(facts);
  return {
    how: 'extensometer',
    demanded,
    contactAllowed: ask.options.contactExtensometer,
    rule,
    gaugeLength,
    extension: extensionAt(read.to, length, read),
    smallestExtension:
      read.from === null ? null : extensionAt(read.from, length, { ...read, assumed: false, source: SMALLEST }),
    strainLengthMm: length.mm,
  };
}

const SMALLEST = 'smallest strain that the results read';

const NO_EXTENSOMETER = {
  demanded: false,
  gaugeLength: null,
  extension: null,
  smallestExtension: null,
  strainLengthMm: null,
} as const;

function gauge({ ask }: StrainFacts, usualMm: number | null): Figure {
  const asked = ask.geometry.gaugeLengthMm;
  if (asked !== undefined) return declared(asked, 'mm', 'as asked', 'requester');
  return usualMm === null
    ? assumed(ANY_GAUGE_MM, 'mm', `${ANY_GAUGE_MM} mm`, [], 'common practice, no source')
    : declared(usualMm, 'mm', 'as the method says', 'method');
}

/** The length that strains are referred to: extension = strain × mm. */
interface StrainLength {
  mm: number;
  formula: string;
  inputs: readonly (readonly [name: string, value: number, unit: string])[];
  source: string | null;
}

function over({ value }: Figure): StrainLength {
  return { mm: value, formula: 'ΔL = ε·Le', inputs: [['Le', value, 'mm']], source: null };
}

/** Deflection of a beam at a strain of its outer fibre; without a span, the shortening of a block. */
function deflectionLength({ ask }: StrainFacts): StrainLength {
  const { spanMm, thicknessMm, diameterMm, heightMm = NaN } = ask.geometry;
  if (spanMm === undefined)
    return { mm: heightMm, formula: 'ΔL = ε·L', inputs: [['L', heightMm, 'mm']], source: 'height' };
  const d = thicknessMm ?? diameterMm ?? NaN;
  const inputs = [
    ['L', spanMm, 'mm'],
    ['d', d, 'mm'],
  ] as const;
  return { mm: spanMm ** 2 / (6 * d), formula: 's = ε·L²/(6·d)', inputs, source: 'ISO 178: deflection at a strain' };
}

function extensionAt(strain: number, length: StrainLength, read: Pick<StrainsRead, 'assumed' | 'source'>): Figure {
  const inputs = [['ε', strain, ''] as const, ...length.inputs];
  const made = read.assumed ? assumed : figure;
  return made(strain * length.mm, 'mm', length.formula, inputs, length.source ?? read.source);
}
