import { numberProblem, refuseIfAny } from '#libs/errors/src/index.js';

/** The strain span of a plastics modulus, 0.05 % to 0.25 % (ISO 527-1). */
const MODULUS_SPAN = 0.002;
const SHARE = 0.01;
/** ± mm for gauge lengths from 20 mm to 50 mm. */
const SMALLEST_MM = 0.001;

/**
 * How far an extensometer may be off, in ± mm, when a plastics modulus is measured: 1 % of the extension between 0.05 % and
 * 0.25 % strain, and 1 µm from 20 mm to 50 mm gauge length. ISO 527-1:2019 5.1.5.1 (seen: 1.0 µm at 50 mm, 1.5 µm at 75 mm).
 *
 * @param gaugeLengthMm at least 20
 * @throws {InvalidInput} when the gauge length is shorter, for which the standard gives no figure
 */
export function modulusExtensionLimitMm(gaugeLengthMm: number): number {
  refuseIfAny([numberProblem('gaugeLengthMm', gaugeLengthMm, { unit: 'mm', min: 20 })]);
  return Math.max(SMALLEST_MM, SHARE * MODULUS_SPAN * gaugeLengthMm);
}
