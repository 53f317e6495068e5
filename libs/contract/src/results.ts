import type { Instant } from './platform.js';

export interface StatisticsView {
  key: string;
  label: string;
  unit: string;
  n: number;
  mean: number;
  standardDeviation: number | null;
  cvPct: number | null;
  ci95: { low: number; high: number } | null;
  min: number;
  max: number;
  median: number;
  /** Specimen labels that Grubbs' test flags; flagged, never dropped. */
  possibleOutliers: string[];
  toleranceBound: { low: number; k: number; sentence: string } | null;
  uncertainty: {
    expanded: number;
    k: number;
    /** Effective degrees of freedom, cut to a whole number; null where they are without limit, absent in reports made before they were kept. */
    degreesOfFreedom?: number | null;
    budget: { source: string; value: number; contributionPct: number }[];
  } | null;
}

export interface BatchResults {
  batchId: string;
  label: string;
  method: string;
  material: string | null;
  /**
   * `step` is the smallest step of a reported value by the method, in the column's unit, `digits` how many significant ones; null where it
   * names none. `definition` says how the result was found; absent in reports made before there were any, and of a result that nobody defined.
   */
  columns: {
    key: string;
    label: string;
    unit: string;
    step: number | null;
    digits?: number | null;
    definition?: string;
  }[];
  rows: {
    specimenId: string;
    label: string;
    fate: string;
    invalidWhy: string | null;
    /** Results that were asked for and have no figure, with the reason; absent in reports made before there were reasons. */
    missing?: { key: string; label: string; why: string | null }[];
    values: Record<string, { value: number; flags: string[]; revision: number } | null>;
  }[];
  statistics: StatisticsView[];
  conformity: {
    specification: string;
    statement: 'conforms' | 'does not conform' | 'cannot be stated';
    rule: string;
    detail: string;
  } | null;
}

export interface CurveView {
  id: string;
  specimenLabel: string;
  columns: { key: string; label: string; unit: string }[];
  points: Record<string, number[]>;
  marks: { key: string; label: string; x: number; y: number }[];
  sha256: string;
  fileName: string;
  rows: number;
}

/** What was detected in a curve file, to be confirmed once per source. */
export interface CurveProposalView {
  fileId: string;
  known: boolean;
  fingerprint: string;
  format: Record<string, unknown>;
  preview: { header: string[]; rows: string[][] };
  problems: { line: number; reason: string }[];
}

export interface HistoryPoint {
  at: Instant;
  requestReference: string;
  jobReference: string;
  batchLabel: string;
  material: string | null;
  cellTag: string | null;
  mean: number;
  standardDeviation: number | null;
  n: number;
}

export interface HistoryView {
  method: string;
  key: string;
  label: string;
  unit: string;
  points: HistoryPoint[];
  chart: {
    centre: number;
    upper: number;
    lower: number;
    movingRangeUpper: number;
    signals: { index: number; sentence: string }[];
  } | null;
}
