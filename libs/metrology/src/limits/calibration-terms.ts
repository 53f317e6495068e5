import type { Provenance } from '#libs/accuracy/src/index.js';

/** How long a calibration by a standard may be relied on. A lab may choose less, never more than the ceiling. */
export interface CalibrationTerm extends Provenance {
  standard: string;
  /** What the standard recommends, whole months. */
  intervalMonths: number;
  /** Never longer than this, whole months; equal to the interval where the standard gives no leeway. */
  ceilingMonths: number;
}

/** The standards disagree, so that each has its own pair. Compare with the editions in force before relying on them. */
export const CALIBRATION_TERMS: readonly CalibrationTerm[] = [
  {
    standard: 'ISO 7500-1',
    intervalMonths: 12,
    ceilingMonths: 12,
    source: 'ISO 7500-1:2018 clause 9',
    confidence: 'from memory (high)',
  },
  { standard: 'ASTM E4', intervalMonths: 12, ceilingMonths: 18, source: 'ASTM E4', confidence: 'from memory (high)' },
  {
    standard: 'ISO 9513',
    intervalMonths: 12,
    ceilingMonths: 18,
    source: 'ISO 9513:2012',
    confidence: 'from memory (medium)',
  },
  { standard: 'ASTM E83', intervalMonths: 12, ceilingMonths: 18, source: 'ASTM E83', confidence: 'from memory (low)' },
];

/** The term of a standard, or null when the lab has to set its own. */
export function termOf(standard: string): CalibrationTerm | null {
  return CALIBRATION_TERMS.find((term) => term.standard === standard) ?? null;
}
