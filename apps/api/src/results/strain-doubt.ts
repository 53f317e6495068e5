import { allowedExtension } from '#libs/accuracy/src/index.js';
import type { ExtensionClass } from '#libs/accuracy/src/index.js';
import type { Geometry, Method } from '#libs/matching/src/index.js';
import type { ResultBasis } from '#libs/records/src/index.js';
import type { Sensitivity } from '#libs/reduction/src/index.js';

/** What a result reads of the strain, from the points that its reduction kept; strains as fractions. */
export interface StrainReads {
  /** Strains between which its slope was drawn; null without a slope. */
  slope: { from: number; to: number } | null;
  /** The strain that it is read at, or that it is; null where no strain enters. */
  at: number | null;
  /** Relative change of the result for one of that strain, and of the slope. */
  sensitivity: Sensitivity;
}

/** The extensometer of a batch: its class and what its extension is over. */
export interface ExtensometerDoubt {
  limits: ExtensionClass;
  /** mm of extension for a strain of 1; null where it does not follow from the sizes. */
  strainLengthMm: number | null;
}

const NO_SENSITIVITY = { strain: 0, slope: 0 };
const AT = ['crossing', 'at-strain', 'peak', 'break'];

/** Reads the kept basis of a result; null where it holds no points, as after a figure that was typed. */
export function strainReadsOf({ points = [], sensitivity = NO_SENSITIVITY }: ResultBasis): StrainReads | null {
  const xOf = (roles: readonly string[]) => points.find(({ role }) => roles.includes(role))?.x ?? null;
  const [from, to] = [xOf(['from']), xOf(['to'])];
  if (points.length === 0) return null;
  return {
    slope: from === null || to === null ? null : { from, to },
    at: xOf(AT),
    sensitivity,
  };
}

/** mm of extension for a strain of 1: the gauge length, or s = ε·L²/(6·h) in three-point bending (ISO 178). */
export function strainLengthOf({ testType, strain }: Method, geometry: Geometry): number | null {
  const { spanMm, thicknessMm, gaugeLengthMm } = geometry;
  if (testType === 'flexure-3') return spanMm && thicknessMm ? spanMm ** 2 / (6 * thicknessMm) : null;
  return testType === 'tension' || testType === 'compression'
    ? (gaugeLengthMm ?? strain?.usualGaugeLengthMm ?? null)
    : null;
}

/**
 * What the class allows of an extension, percent of it: the relative limit, or the absolute one where that is larger
 * (ISO 9513:2012 table 2, ASTM E83 table 1). Between two strains the absolute limit counts on their difference.
 */
export function allowedPct({ limits, strainLengthMm }: ExtensometerDoubt, strain: number | null): number {
  if (strainLengthMm === null || strain === null || !(strain > 0)) return limits.biasPct;
  const extensionMm = strain * strainLengthMm;
  return (100 * allowedExtension(limits, extensionMm, strainLengthMm).biasMm) / extensionMm;
}
