import type { Geometry } from './ask.js';
import { assumed, declared, figure } from './figure.js';
import { loadAt } from './load-at.js';
import type { Method, SpeedRule, SpeedStage } from '../register/method.js';
import type { Figure } from './needs.js';

type LoadLaw = Pick<Method, 'testType' | 'loadingSpanRatio'>;

/** What a stress rate needs besides the geometry: Young's modulus, MPa, and stiffness of frame and train, N/mm. */
export interface Stiffnesses {
  modulusMPa: number;
  frameNPerMm: number;
}

/**
 * Crosshead speed of one stage, mm/min (rotation: °/min).
 *
 * - strain rate: v = ė·L·60
 * - outer-fibre rate in bending: v = Z·L²/(6·d) (ASTM D790 equation 1, ISO 178)
 * - stress rate: v = 60·(σ̇·L/E + Ḟ/k), the specimen's stretch and the frame's own
 *
 * @param askedMmPerMin speed that the requester chose, for methods that leave it open
 */
export function speedOf(
  stage: SpeedStage,
  geometry: Geometry,
  method: LoadLaw,
  askedMmPerMin: number | null,
  stiff: Stiffnesses,
): Figure {
  const { rule, source } = stage;
  const { spanMm = NaN, thicknessMm, diameterMm } = geometry;
  switch (rule.kind) {
    case 'fixed':
      return figure(rule.mmPerMin, 'mm/min', 'v as the method says', [], source);
    case 'asked':
      return askedMmPerMin === null
        ? assumed(rule.usualMmPerMin, 'mm/min', 'v as usual', [], source)
        : declared(askedMmPerMin, 'mm/min', 'v as asked', 'requester');
    case 'rotation':
      return figure(rule.degPerMin, '°/min', 'ω as the method says', [], source);
    case 'flexure-rate': {
      const d = thicknessMm ?? diameterMm ?? NaN;
      const value = (rule.outerFibrePerMin * spanMm ** 2) / (6 * d);
      const inputs = [
        ['Z', rule.outerFibrePerMin, '1/min'],
        ['L', spanMm, 'mm'],
        ['d', d, 'mm'],
      ] as const;
      return figure(value, 'mm/min', 'v = Z·L²/(6·d)', inputs, source);
    }
    case 'strain-rate': {
      const over = geometry[rule.over] ?? NaN;
      const inputs = [
        ['ė', rule.perS, '1/s'],
        ['L', over, 'mm'],
      ] as const;
      return figure(rule.perS * over * 60, 'mm/min', 'v = 60·ė·L', inputs, source);
    }
    case 'stress-rate':
      return stressRateSpeed(stage, rule.mPaPerS, geometry, method, stiff);
  }
}

/** Force rate of a stress rate, N/s: the force formula of the test type at σ̇; null for every other rule. */
export function forceRateOf(rule: SpeedRule, geometry: Geometry, method: LoadLaw): Figure | null {
  if (rule.kind !== 'stress-rate') return null;
  const rate = loadAt(rule.mPaPerS, geometry, method);
  return { ...rate, unit: 'N/s', formula: rate.formula.replace('F =', 'Ḟ =').replace('σ', 'σ̇') };
}

/** The specimen's own stretch (in bending: deflection) at the stress rate, and that of the frame under the force rate. */
function stressRateSpeed(
  stage: SpeedStage,
  mPaPerS: number,
  geometry: Geometry,
  method: LoadLaw,
  stiff: Stiffnesses,
): Figure {
  const rate = loadAt(mPaPerS, geometry, method).value;
  const { spanMm = NaN, thicknessMm, diameterMm } = geometry;
  const bends = method.testType === 'flexure-3' || method.testType === 'flexure-4';
  const length = bends
    ? spanMm ** 2 / (6 * (thicknessMm ?? diameterMm ?? NaN))
    : (geometry.parallelLengthMm ?? geometry.heightMm ?? geometry.gripSeparationMm ?? 0);
  const inputs = [
    ['σ̇', mPaPerS, 'MPa/s'],
    [bends ? 'L²/(6·d)' : 'L', length, 'mm'],
    ['E', stiff.modulusMPa, 'MPa'],
    ['Ḟ', rate, 'N/s'],
    ['k', stiff.frameNPerMm, 'N/mm'],
  ] as const;
  const value = 60 * ((mPaPerS * length) / stiff.modulusMPa + rate / stiff.frameNPerMm);
  return figure(value, 'mm/min', `v = 60·(σ̇·${bends ? 'L²/(6·d)' : 'L'}/E + Ḟ/k)`, inputs, stage.source);
}
