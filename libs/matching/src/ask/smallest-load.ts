import type { Ask, Band } from './ask.js';
import { assumed, figure } from './figure.js';
import { loadAt } from './load-at.js';
import type { Material } from '../register/material.js';
import type { Method } from '../register/method.js';
import type { Figure } from './needs.js';

/** Results whose reduction starts at the lower strain bound of the modulus. */
const FROM_THE_FOOT = ['modulus', 'offset-yield', 'stiffness'];

/** Where nothing is known of the stiffness, reading is taken to start at this part of the peak (common practice, no source). */
const FOOT_SHARE = 0.05;

/** Young's modulus, MPa: declared before library; null when neither says it. */
export function modulusUsed(ask: Ask, material: Material | null): Band | null {
  return ask.modulusMPa ?? material?.modulusMPa ?? null;
}

/**
 * The smallest load that a wanted result reads, N or N·m: for a modulus the load at its lower strain bound, σ = E_low·ε₁
 * put into the load formula; for the others the low end of the peak band.
 */
export function smallestLoad(ask: Ask, method: Method, modulus: Band | null, peakLow: Figure): Figure {
  if (!ask.results.some((each) => FROM_THE_FOOT.includes(each))) {
    return { ...peakLow, formula: `low end of the peak band: ${peakLow.formula}` };
  }
  if (!method.modulusStrain || !modulus) {
    const inputs = [['F_lo', peakLow.value, peakLow.unit]] as const;
    return assumed(
      FOOT_SHARE * peakLow.value,
      peakLow.unit,
      `${FOOT_SHARE}·F_lo`,
      inputs,
      'common practice, no source',
    );
  }
  const strain = method.modulusStrain.from;
  const { value, unit, formula, inputs } = loadAt(modulus.low * strain, ask.geometry, method);
  const rest = inputs.slice(1).map((each) => [each.name, each.value, each.unit] as const);
  const own = [['E', modulus.low, 'MPa'], ['ε₁', strain, ''], ...rest] as const;
  return figure(
    Math.min(value, peakLow.value),
    unit,
    formula.replace(/[στ]/, 'E·ε₁'),
    own,
    `${method.designation}: modulus from strain ${strain}`,
  );
}
