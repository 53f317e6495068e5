import { resultWords } from '#libs/contract/src/index.js';
import type { JobView } from '#libs/contract/src/index.js';
import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { loadAt, plasticTorque } from '#libs/matching/src/index.js';
import type { Ask, Method } from '#libs/matching/src/index.js';
import { STRESSES } from '#libs/reduction/src/index.js';
import { findUnit, formatNumber, isUnit, QUANTITIES, toInternal, unitsOf } from '#libs/units/src/index.js';
import type { Quantity } from '#libs/units/src/index.js';
import { dimensionsNeeded, isMeasured, measuredGeometry } from './dimensions.js';

const PEAK = 'peak-load';
const STRENGTH = 'peak-stress';

/** A figure in the unit that results are kept in: the shown unit of its key, strain as a fraction. */
export interface KeptFigure {
  key: string;
  value: number;
  unit: string;
}

/** The results that are wanted. A strength that follows from the peak and the lengths is computed, and the peak typed instead. */
export function resultsNeeded(method: Method, ask: Ask): JobView['resultsNeeded'] {
  const wanted = ask.results.length > 0 ? ask.results : method.usualResults;
  const computed = wanted.includes(STRENGTH) && isComputed(method);
  const keys = [...new Set([...(computed ? [PEAK] : []), ...wanted])];
  return keys.map((key) => {
    const { label, unit } = resultWords(key, method.testType);
    return { key, label, unit, typed: !(computed && key === STRENGTH) };
  });
}

/** A test of a component has a peak and no stress. */
function isComputed({ testType }: Method): boolean {
  return testType !== 'component';
}

/** N/mm is a force per width but for this key; every other shown unit belongs to the first quantity that knows it. */
const QUANTITY_OF_KEY: Readonly<Record<string, Quantity>> = { stiffness: 'stiffness' };

/** @returns the figure as it is kept, or what is wrong with the field */
export function readTyped(
  typed: { key: string; value: number; unit: string },
  method: Method,
  at: number,
): KeptFigure | FieldProblem {
  const { unit: shown, factor } = resultWords(typed.key, method.testType);
  const field = `results[${at}]`;
  if (typed.unit === shown)
    return { key: typed.key, value: typed.value / factor, unit: factor === 1 ? shown : KEPT_STRAIN };
  const quantity = QUANTITY_OF_KEY[typed.key] ?? QUANTITIES.find((each) => isUnit(shown, each));
  const unit = quantity && findUnit(typed.unit, quantity);
  if (!quantity || !unit) {
    const allowed = quantity ? `one of ${unitsOf(quantity).join(', ')}` : shown || 'no unit';
    return fieldProblem({ field: `${field}.unit`, found: typed.unit, allowed, unit: '' });
  }
  return { key: typed.key, value: toInternal(typed.value, unit), unit: factor === 1 ? shown : KEPT_STRAIN };
}

const KEPT_STRAIN = 'mm/mm';

export interface Bounds {
  /** Rated load of the cell, N or N·m. */
  capacity: number;
  cellTag: string;
  loadUnit: string;
}

const isStress = (key: string): boolean => STRESSES.some((stress) => stress === key);

/** How far the lengths of a specimen may be from those that were asked for before a load that follows from them means nothing. */
const LOAD_MARGIN = 2;

/** A load above what the cell is rated for was not measured by it, and but for strains no figure is below zero. */
export function figureProblem(
  { key, value, unit }: KeptFigure,
  at: number,
  bounds: Bounds,
  { method, ask }: { method: Method; ask: Ask },
): FieldProblem | null {
  const field = `results[${at}].value`;
  const plain = key.split('@')[0]!;
  if (key !== PEAK) {
    const problem = numberProblem(
      field,
      value,
      plain.includes('strain') && !isStress(plain) ? { unit } : { unit, min: 0 },
    );
    if (problem || !isStress(plain) || !isComputed(method) || method.testType === 'torsion') return problem;
    const load = loadAt(value, ask.geometry, method).value;
    if (!(load > LOAD_MARGIN * bounds.capacity)) return null;
    const most = (value * bounds.capacity) / load;
    return fieldProblem(
      { field, found: value, allowed: `at most about ${formatNumber(most, 3)} ${unit} on ${bounds.cellTag}`, unit: '' },
      `On a specimen of the size that was asked for it is a force of ${formatNumber(load, 3)} N; ${bounds.cellTag} is rated for ${formatNumber(bounds.capacity, 3)} N.`,
    );
  }
  const problem = numberProblem(field, value, { unit: bounds.loadUnit, above: 0, max: bounds.capacity });
  return (
    problem &&
    fieldProblem(
      problem,
      `${bounds.cellTag} is rated for no more: if it was overloaded, mark the specimen invalid and report the cell.`,
    )
  );
}

/** The strength that follows from the peak and the measured lengths, with the formula behind it; null where it cannot be said. */
export function strengthFrom(
  peak: number,
  method: Method,
  ask: Ask,
  dimensions: Readonly<Record<string, readonly number[]>>,
): (KeptFigure & { basis: Record<string, unknown> }) | null {
  if (!isComputed(method) || !isMeasured(dimensionsNeeded(method, ask), dimensions)) return null;
  const geometry = measuredGeometry(ask, dimensions);
  const plastic = method.testType === 'torsion' && method.reduction['torsionStress'] === 'plastic';
  const { value: perUnit, formula, inputs } = plastic ? plasticTorque(1, geometry) : loadAt(1, geometry, method);
  const value = peak / perUnit;
  if (!Number.isFinite(value)) return null;
  return { key: STRENGTH, value, unit: resultWords(STRENGTH, method.testType).unit, basis: { formula, peak, inputs } };
}
