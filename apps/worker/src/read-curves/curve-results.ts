import type { CurveLack } from '#libs/bench/src/index.js';
import { resultWords } from '#libs/contract/src/index.js';
import { GEOMETRY_LABELS, loadAt } from '#libs/matching/src/index.js';
import type { Geometry, GeometryKey, Method, TestType } from '#libs/matching/src/index.js';
import type { ResultBasis } from '#libs/records/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { CURVE_CHANNELS, sayFlag, sayMissing } from '#libs/reduction/src/index.js';
import type { Curve, MissingReason, ReducedResult, ReductionOutcome } from '#libs/reduction/src/index.js';

/** A result of a curve as it is kept. */
export interface CurveResult {
  key: string;
  value: number;
  unit: string;
  basis: ResultBasis;
}

/** What the cell of the train is rated for, N or N·m. */
export interface CellRating {
  tag: string;
  capacity: number;
  unit: string;
}

type Reduced = Extract<ReductionOutcome, { state: 'reduced' }>;

/** Tests whose strength follows from the peak by a formula of their own, not by that of the recipe's kind. */
const OWN_LAW: readonly TestType[] = ['in-plane-shear', 'double-shear', 'strip', 'fracture'];

/**
 * The results with the points that they rest on and their flags. The peak is always there: its basis also holds the flags of the
 * whole curve, as `lacks` what could not be had, and how stress and strain follow from the record.
 *
 * @param nominal sizes of the section that nobody measured on this specimen
 */
export function curveResults(
  outcome: Reduced,
  curve: Curve,
  method: Method,
  geometry: Geometry,
  cell: CellRating | null,
  nominal: readonly GeometryKey[] = [],
): CurveResult[] {
  const peak = outcome.results.find(({ key }) => key === 'peak-load')?.value;
  return outcome.results.map((result) => {
    const isPeak = result.key === 'peak-load';
    const atPeak = isPeak ? [...overload(result.value, cell), ...outcome.flags.map(sayFlag)] : [];
    const flags = [...result.flags.map(sayFlag), ...notMeasured(result.unit, geometry, nominal), ...atPeak];
    const ofPeak = isPeak ? { lacks: lacksOf(outcome, method), scales: outcome.scales } : {};
    const sensitive = result.sensitivity ? { sensitivity: result.sensitivity } : {};
    const basis = {
      at: result.points.map(({ index }) => rowOf(curve, index)),
      points: result.points,
      flags,
      ...sensitive,
      ...ofPeak,
    };
    const kept = { key: keyOf(result, outcome.results), value: result.value, unit: result.unit, basis };
    return result.key === 'peak-stress' && peak !== undefined && OWN_LAW.includes(method.testType)
      ? byOwnLaw(kept, peak, method, geometry)
      : kept;
  });
}

const STRESS_UNITS = ['MPa', 'MJ/m³', 'N/mm'];

/** What rests on the section rests on sizes that nobody measured on this specimen. */
function notMeasured(unit: string, geometry: Geometry, nominal: readonly GeometryKey[]): string[] {
  if (!STRESS_UNITS.includes(unit)) return [];
  return nominal.map(
    (key) =>
      `${GEOMETRY_LABELS[key]} was not measured on this specimen; the nominal ${formatNumber(geometry[key]!)} mm stands in.`,
  );
}

/** A peak that the cell cannot have read: a unit was taken wrongly, or the cell was overloaded. */
function overload(peak: number, cell: CellRating | null): string[] {
  if (cell === null || peak <= cell.capacity) return [];
  const [found, rated] = [formatNumber(peak), formatNumber(cell.capacity)];
  return [
    `The peak of ${found} ${cell.unit} is above the ${rated} ${cell.unit} that ${cell.tag} is rated for: check the units of the file, and the cell.`,
  ];
}

/** Reasons that lie in the test itself: there is no such result, whatever else is measured or recorded. */
const FINAL: readonly MissingReason[] = ['not-reached', 'no-yield-drop', 'does-not-apply', 'extension-ended'];

function lacksOf({ missing }: Reduced, { testType }: Method): CurveLack[] {
  return missing.map((one) => ({
    key: one.key,
    why: `${resultWords(one.key, testType).label}: ${sayMissing(one)}.`,
    isFinal: FINAL.includes(one.reason),
  }));
}

/** Every channel of one row, as recorded. */
function rowOf(curve: Curve, index: number): Record<string, number> {
  return Object.fromEntries(
    CURVE_CHANNELS.flatMap((channel) => (curve[channel] ? [[channel, curve[channel][index]!]] : [])),
  );
}

/** Several of one key (stress at 100 % and at 300 %) are told apart by the strain that they belong to. */
function keyOf({ key, at }: ReducedResult, all: readonly ReducedResult[]): string {
  const alike = all.filter((other) => other.key === key);
  return alike.length > 1 && at !== null ? `${key}@${at}` : key;
}

function byOwnLaw(kept: CurveResult, peak: number, method: Method, geometry: Geometry): CurveResult {
  const { value: perUnit, formula, inputs } = loadAt(1, geometry, method);
  const unit = resultWords('peak-stress', method.testType).unit;
  return { ...kept, value: peak / perUnit, unit, basis: { ...kept.basis, formula, inputs } };
}
