import { resultWords } from '#libs/contract/src/index.js';
import { loadAt } from '#libs/matching/src/index.js';
import type { Geometry, Method, TestType } from '#libs/matching/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { CURVE_CHANNELS, sayFlag, sayMissing } from '#libs/reduction/src/index.js';
import type { Curve, ReducedResult, ReductionOutcome } from '#libs/reduction/src/index.js';

/** A result of a curve as it is kept. */
export interface CurveResult {
  key: string;
  value: number;
  unit: string;
  basis: Record<string, unknown>;
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
 * The results with the points that they rest on and their flags. What the curve as a whole shows, and what could not be had, is said at
 * the peak, which is always there.
 */
export function curveResults(
  outcome: Reduced,
  curve: Curve,
  method: Method,
  geometry: Geometry,
  cell: CellRating | null,
): CurveResult[] {
  const peak = outcome.results.find(({ key }) => key === 'peak-load')?.value;
  return outcome.results.map((result) => {
    const atPeak = result.key === 'peak-load' ? [...overload(result.value, cell), ...wholeCurve(outcome, method)] : [];
    const flags = [...result.flags.map(sayFlag), ...atPeak];
    const basis = { at: result.points.map(({ index }) => rowOf(curve, index)), points: result.points, flags };
    const kept = { key: keyOf(result, outcome.results), value: result.value, unit: result.unit, basis };
    return result.key === 'peak-stress' && peak !== undefined && OWN_LAW.includes(method.testType)
      ? byOwnLaw(kept, peak, method, geometry)
      : kept;
  });
}

/** A peak that the cell cannot have read: a unit was taken wrongly, or the cell was overloaded. */
function overload(peak: number, cell: CellRating | null): string[] {
  if (cell === null || peak <= cell.capacity) return [];
  const [found, rated] = [formatNumber(peak), formatNumber(cell.capacity)];
  return [
    `The peak of ${found} ${cell.unit} is above the ${rated} ${cell.unit} that ${cell.tag} is rated for: check the units of the file, and the cell.`,
  ];
}

function wholeCurve({ flags, missing }: Reduced, { testType }: Method): string[] {
  const lacks = missing.map((one) => `${resultWords(one.key, testType).label} is missing: ${sayMissing(one)}.`);
  return [...flags.map(sayFlag), ...lacks];
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
