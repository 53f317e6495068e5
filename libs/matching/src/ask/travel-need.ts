import type { Ask, Band } from './ask.js';
import { assumed, declared, figure } from './figure.js';
import type { Material } from '../register/material.js';
import type { Method } from '../register/method.js';
import type { Figure } from './needs.js';
import { sectionArea } from './section.js';
import { UNKNOWN_BREAK_STRAIN } from './strains-read.js';

const PRACTICE = 'common practice, no source';

/** Travel of a test that gives no strain to compute it from, mm. */
const SHORT_TRAVEL_MM = 10;

/**
 * Crosshead travel to the end of the test, mm: declared, or from the strain at the end: ε·L in tension and compression,
 * ε·L²/(6·d) in bending (ASTM D790), twice the bonded length in a T or 180° peel and once in a 90° peel.
 */
export function travelNeed(ask: Ask, method: Method, material: Material | null): Figure {
  if (ask.travelMm !== null) return declared(ask.travelMm, 'mm', 'as asked', 'requester');
  const { geometry } = ask;
  switch (method.testType) {
    case 'tension':
    case 'strip':
    case 'compression':
      return stretch(ask, method, material);
    case 'flexure-3':
    case 'flexure-4': {
      const strain = endStrain(method, material);
      const d = geometry.thicknessMm ?? geometry.diameterMm ?? geometry.outerDiameterMm ?? NaN;
      const span = geometry.spanMm ?? NaN;
      const inputs = [
        ['ε', strain.value, ''],
        ['L', span, 'mm'],
        ['d', d, 'mm'],
      ] as const;
      const road = strain.assumed ? assumed : figure;
      return road((strain.value * span ** 2) / (6 * d), 'mm', 'D = ε·L²/(6·d)', inputs, strain.source);
    }
    case 'peel':
    case 'tear':
      return peelTravel(ask, method);
    case 'torsion':
      return declared(0, 'mm', 'none', 'torsion');
    default:
      return assumed(SHORT_TRAVEL_MM, 'mm', `${SHORT_TRAVEL_MM} mm`, [], PRACTICE);
  }
}

function stretch(ask: Ask, method: Method, material: Material | null): Figure {
  const strain = endStrain(method, material);
  const { gripSeparationMm, parallelLengthMm, heightMm, gaugeLengthMm } = ask.geometry;
  const length = method.testType === 'compression' ? heightMm : (parallelLengthMm ?? gripSeparationMm ?? gaugeLengthMm);
  const road = strain.assumed ? assumed : figure;
  return road(
    strain.value * (length ?? NaN),
    'mm',
    'δ = ε·L',
    [
      ['ε', strain.value, ''],
      ['L', length ?? NaN, 'mm'],
    ],
    strain.source,
  );
}

function endStrain(method: Method, material: Material | null): { value: number; source: string; assumed: boolean } {
  if (method.endStrain !== null)
    return { value: method.endStrain, source: `${method.designation}: end of the test`, assumed: false };
  if (material?.breakStrain)
    return { value: material.breakStrain.high, source: `${material.name}: strain at break`, assumed: false };
  return { value: UNKNOWN_BREAK_STRAIN, source: PRACTICE, assumed: true };
}

function peelTravel(ask: Ask, method: Method): Figure {
  const times = method.ends.by === 'fixture' && method.ends.purpose === 'peel-90' ? 1 : 2;
  const length = ask.geometry.lengthMm;
  const formula = times === 1 ? 'δ = l' : 'δ = 2·l';
  if (length === undefined) return assumed(times * 100, 'mm', formula, [['l', 100, 'mm']], PRACTICE);
  return figure(times * length, 'mm', formula, [['l', length, 'mm']], 'geometry of the peel');
}

/** Elastic stretch of a joint or a short block, which the formulas above do not give, mm (common practice, no source). */
const STIFF_STRETCH_MM = 1;

/**
 * What the specimen lets go at the peak, J: ½·F·δ with the elastic stretch δ = F·L/(E·A), never more than the travel. Without a
 * modulus the whole travel counts as elastic, as rubber and fabric do; a joint or short block stretches little; a peel or tear spends
 * its energy as it goes and keeps none.
 */
export function storedEnergy(ask: Ask, method: Method, modulus: Band | null, peak: Figure, travel: Figure): Figure {
  const kind = ENERGY[method.testType];
  if (kind === 'none') return figure(0, 'J', 'none', [], method.testType);
  const stretchMm = Math.min(
    kind === 'stiff' ? STIFF_STRETCH_MM : elasticStretch(ask, method, modulus, peak),
    travel.value,
  );
  const inputs = [
    ['F', peak.value, 'N'],
    ['δ', stretchMm, 'mm'],
  ] as const;
  return figure(
    (peak.value * stretchMm) / 2 / 1000,
    'J',
    '½·F·δ',
    inputs,
    kind === 'stiff' ? PRACTICE : 'strength of materials',
  );
}

const ENERGY: Record<Method['testType'], 'none' | 'stiff' | 'stretch'> = {
  tension: 'stretch',
  compression: 'stretch',
  strip: 'stretch',
  'flexure-3': 'stretch',
  'flexure-4': 'stretch',
  component: 'stretch',
  'lap-shear': 'stiff',
  'short-beam': 'stiff',
  'in-plane-shear': 'stiff',
  'double-shear': 'stiff',
  fracture: 'stiff',
  peel: 'none',
  tear: 'none',
  torsion: 'none',
};

function elasticStretch(ask: Ask, method: Method, modulus: Band | null, peak: Figure): number {
  if (!modulus || (method.testType !== 'tension' && method.testType !== 'compression')) return Infinity;
  const { parallelLengthMm, gripSeparationMm, heightMm } = ask.geometry;
  const length = method.testType === 'compression' ? heightMm : (gripSeparationMm ?? parallelLengthMm);
  const area = sectionArea(ask.geometry).value;
  return length && area > 0 ? (peak.value * length) / (modulus.low * area) : Infinity;
}
