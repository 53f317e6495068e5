import type { Provenance } from './provenance.js';

/** Largest values that a class allows, in percent; the best class first. */
export interface ForceClass extends Provenance {
  className: '0.5' | '1' | '2' | '3';
  /** q, relative error of indication, ± %. */
  indicationPct: number;
  /** b, relative repeatability error, %. */
  repeatabilityPct: number;
  /** v, relative reversibility error, ± %. */
  reversibilityPct: number;
  /** f0, relative zero error, ± % of the range's maximum. */
  zeroPct: number;
  /** a, relative resolution, %. */
  resolutionPct: number;
  /** Lowest force of a verified range, as a multiple of the resolution. */
  lowestInResolutions: number;
}

const TABLE_2: Provenance = {
  source: 'ISO 7500-1:2018 table 2, and 6.3 for the lowest force; OIML R 65:2006 has the same limits',
  confidence: 'from memory (high)',
};

/** What decides whether one force class meets another, in percent; null where the standard sets no limit. */
export interface ForceGrade extends Provenance {
  standard: 'ISO 7500-1' | 'ASTM E4';
  className: string;
  indicationPct: number;
  repeatabilityPct: number;
  reversibilityPct: number | null;
  zeroPct: number | null;
  lowestInResolutions: number;
}

/** ISO 7500-1 table 2. Compare with the edition in force before relying on it. */
export const FORCE_CLASSES: readonly ForceClass[] = [
  {
    className: '0.5',
    indicationPct: 0.5,
    repeatabilityPct: 0.5,
    reversibilityPct: 0.75,
    zeroPct: 0.05,
    resolutionPct: 0.25,
    lowestInResolutions: 400,
    ...TABLE_2,
  },
  {
    className: '1',
    indicationPct: 1,
    repeatabilityPct: 1,
    reversibilityPct: 1.5,
    zeroPct: 0.1,
    resolutionPct: 0.5,
    lowestInResolutions: 200,
    ...TABLE_2,
  },
  {
    className: '2',
    indicationPct: 2,
    repeatabilityPct: 2,
    reversibilityPct: 3,
    zeroPct: 0.2,
    resolutionPct: 1,
    lowestInResolutions: 100,
    ...TABLE_2,
  },
  {
    className: '3',
    indicationPct: 3,
    repeatabilityPct: 3,
    reversibilityPct: 4.5,
    zeroPct: 0.3,
    resolutionPct: 1.5,
    lowestInResolutions: 67,
    ...TABLE_2,
  },
];

/** The classes of ISO 7500-1, and the one grade of ASTM E4, which limits neither reversibility nor zero. */
export const FORCE_GRADES: readonly ForceGrade[] = [
  ...FORCE_CLASSES.map((each) => ({ standard: 'ISO 7500-1' as const, ...each })),
  {
    standard: 'ASTM E4',
    className: '1 %',
    indicationPct: 1,
    repeatabilityPct: 1,
    reversibilityPct: null,
    zeroPct: null,
    lowestInResolutions: 200,
    source: 'ASTM E4: error and repeatability 1.0 %, lowest force 200 resolutions',
    confidence: 'from memory (high)',
  },
];
