import { fitLine } from '../statistics/fit-line.js';
import type { Place } from './crossings.js';
import type { PreparedTest } from './prepared-test.js';
import type { Sensitivity } from './reduction-outcome.js';

/** Rows on either side of a place from which the tangent is told. */
const BESIDE = 5;

/**
 * How far the stress at a strain follows an error of the strain: dσ/σ = −(T·ε/σ)·dε/ε, with T the tangent there; a strain that is
 * recorded too large is reached too early.
 *
 * @param strain counted from the corrected zero
 */
export function ofStressAtStrain(test: PreparedTest, { index, y }: Place, strain: number): Sensitivity {
  return { strain: (-tangentAt(test, index) * strain) / y, slope: 0 };
}

/**
 * How far an offset yield follows an error of the slope that its line is drawn by: with the line through a foot that stays,
 * dσ/σ = −T/(E − T)·dE/E; and of the strain of the offset itself, dσ/σ = −T·E/(E − T)·offset/σ·dε/ε.
 */
export function ofOffsetYield(test: PreparedTest, { index, y }: Place, slope: number, offset: number): Sensitivity {
  const tangent = Math.min(tangentAt(test, index), slope / 2);
  const softness = tangent / (slope - tangent);
  return { strain: (-softness * slope * offset) / y, slope: -softness };
}

/** How far a plastic strain follows an error of the slope, along which the elastic part is taken off: (σ/E)/εp·dE/E. */
export function ofPlasticStrain(elastic: number, plastic: number): Sensitivity {
  return { strain: 0, slope: elastic / plastic };
}

/** Slope of the curve about a row; 0 where it does not rise. */
function tangentAt({ x, y, breakIndex }: PreparedTest, index: number): number {
  const [from, to] = [Math.max(0, index - BESIDE), Math.min(breakIndex, index + 1 + BESIDE)];
  return x[to]! > x[from]! ? Math.max(0, fitLine(x, y, from, to + 1).slope) : 0;
}
