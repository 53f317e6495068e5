import type { Provenance } from './provenance.js';

export type ExtensionStandard = 'ISO 9513' | 'ASTM E83';

/**
 * Largest errors that an extensometer's class allows. Where a figure has two limits, the larger of the two applies.
 * Absolute limits are in mm for ISO 9513 and in strain (fraction of the gauge length) for ASTM E83; the other is null.
 */
export interface ExtensionClass extends Provenance {
  standard: ExtensionStandard;
  className: string;
  /** ± % of the gauge length. */
  gaugeLengthPct: number;
  /** % of the reading. */
  resolutionPct: number;
  resolutionMm: number | null;
  resolutionStrain: number | null;
  /** ± % of the extension (ISO) or strain (ASTM). */
  biasPct: number;
  biasMm: number | null;
  biasStrain: number | null;
}

const ISO_TABLE_2: Provenance = { source: 'ISO 9513:2012 table 2', confidence: 'from memory (high)' };
const E83_TABLE_1: Provenance = { source: 'ASTM E83 table 1', confidence: 'from memory (medium)' };
const E83_CLASS_C: Provenance = {
  source: 'ASTM E83 table 1; 0.001 or 1 % also as quoted in ASTM D638',
  confidence: 'seen',
};

const iso = (
  className: string,
  gaugeLengthPct: number,
  resolutionPct: number,
  resolutionMm: number,
  biasPct: number,
  biasMm: number,
): ExtensionClass => ({
  standard: 'ISO 9513',
  className,
  gaugeLengthPct,
  resolutionPct,
  resolutionMm,
  resolutionStrain: null,
  biasPct,
  biasMm,
  biasStrain: null,
  ...ISO_TABLE_2,
});

const e83 = (
  className: string,
  gaugeLengthPct: number,
  biasPct: number,
  biasStrain: number,
  from = E83_TABLE_1,
): ExtensionClass => ({
  standard: 'ASTM E83',
  className,
  gaugeLengthPct,
  resolutionPct: biasPct / 2, // E83 asks for half of the allowed error
  resolutionMm: null,
  resolutionStrain: biasStrain / 2,
  biasPct,
  biasMm: null,
  biasStrain,
  ...from,
});

/** Both tables, each with its best class first. Compare with the editions in force before relying on them. */
export const EXTENSION_CLASSES: readonly ExtensionClass[] = [
  iso('0.2', 0.2, 0.1, 0.0002, 0.2, 0.0006),
  iso('0.5', 0.5, 0.25, 0.0005, 0.5, 0.0015),
  iso('1', 1, 0.5, 0.001, 1, 0.003),
  iso('2', 2, 1, 0.002, 2, 0.006),
  e83('A', 0.1, 0.1, 0.00002),
  e83('B-1', 0.25, 0.5, 0.0001),
  e83('B-2', 0.5, 0.5, 0.0002),
  e83('C', 1, 1, 0.001, E83_CLASS_C),
  e83('D', 1, 1, 0.01),
  e83('E', 1, 1, 0.1),
];

/** The classes of one standard, the best first. */
export function extensionClassesOf(standard: ExtensionStandard): ExtensionClass[] {
  return EXTENSION_CLASSES.filter((one) => one.standard === standard);
}

/** Whether a standard classifies extensometers; the others classify forces. */
export function isExtensionStandard(standard: string): standard is ExtensionStandard {
  return EXTENSION_CLASSES.some((one) => one.standard === standard);
}
