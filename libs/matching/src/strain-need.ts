import type { Ask } from './ask.js';
import { assumed, declared, figure } from './figure.js';
import type { Material } from './material.js';
import type { Method } from './method.js';
import type { Figure, StrainNeed } from './needs.js';

/** Results that follow the strain to the break; for the others the extensometer may come off earlier. */
const TO_BREAK = [
  'strain-at-peak',
  'plastic-strain-at-peak',
  'strain-at-break',
  'plastic-strain-at-break',
  'work-density-to-break',
];

/** Strain to follow for yield and modulus alone, as a fraction (common practice, no source). */
const EARLY_STRAIN = 0.02;

/** Gauge length where neither ask nor method names one, mm. */
const ANY_GAUGE_MM = 50;

/** Whether strain is measured, how, and what the extensometer must do for the results that are wanted. */
export function strainNeed(ask: Ask, method: Method, material: Material | null): StrainNeed {
  const rule = method.strain;
  const wants = (keys: readonly string[]) => ask.results.some((each) => keys.includes(each));
  const demanded = rule !== null && wants(rule.demandedFor);
  const preferred = rule !== null && wants(rule.preferredFor);
  const contactAllowed = ask.options.contactExtensometer;
  if (!rule || (!demanded && !preferred))
    return { how: 'none', demanded: false, contactAllowed, rule: null, gaugeLength: null, extension: null };
  if (!demanded && ask.options.crossheadStrain) {
    return { how: 'crosshead', demanded: false, contactAllowed, rule, gaugeLength: null, extension: null };
  }
  const gaugeLength = rule.measures === 'axial' ? gauge(ask, rule.usualGaugeLengthMm) : null;
  return {
    how: 'extensometer',
    demanded,
    contactAllowed,
    rule,
    gaugeLength,
    extension: extension(ask, method, material, gaugeLength),
  };
}

function gauge(ask: Ask, usualMm: number | null): Figure {
  const asked = ask.geometry.gaugeLengthMm;
  if (asked !== undefined) return declared(asked, 'mm', 'as asked', 'requester');
  return usualMm === null
    ? assumed(ANY_GAUGE_MM, 'mm', `${ANY_GAUGE_MM} mm`, [], 'common practice, no source')
    : declared(usualMm, 'mm', 'as the method says', 'method');
}

function extension(ask: Ask, method: Method, material: Material | null, gaugeLength: Figure | null): Figure {
  const late = ask.results.some((each) => TO_BREAK.includes(each));
  const end = method.endStrain ?? material?.breakStrain?.high ?? null;
  const strain = late && end !== null ? end : Math.max(EARLY_STRAIN, method.modulusStrain?.to ?? 0);
  const source = late && end !== null ? 'strain at the end of the test' : 'strain at modulus and yield';
  const unknown = late && end === null;
  if (!gaugeLength) return deflection(ask, Math.max(strain, method.modulusStrain?.to ?? 0));
  const inputs = [
    ['ε', strain, ''],
    ['Le', gaugeLength.value, 'mm'],
  ] as const;
  return (unknown ? assumed : figure)(strain * gaugeLength.value, 'mm', 'ΔL = ε·Le', inputs, source);
}

function deflection(ask: Ask, strain: number): Figure {
  const { spanMm = NaN, thicknessMm, diameterMm, heightMm = NaN } = ask.geometry;
  const d = thicknessMm ?? diameterMm ?? NaN;
  if (Number.isNaN(spanMm))
    return figure(
      strain * heightMm,
      'mm',
      'ΔL = ε·L',
      [
        ['ε', strain, ''],
        ['L', heightMm, 'mm'],
      ],
      'height',
    );
  const inputs = [
    ['ε', strain, ''],
    ['L', spanMm, 'mm'],
    ['d', d, 'mm'],
  ] as const;
  return figure((strain * spanMm ** 2) / (6 * d), 'mm', 's = ε·L²/(6·d)', inputs, 'ISO 178: deflection at a strain');
}
