import type { TypedFigure } from '#libs/bench/src/index.js';
import { resultWords } from '#libs/contract/src/index.js';
import type { JobView } from '#libs/contract/src/index.js';
import { loadAt, plasticTorque } from '#libs/matching/src/index.js';
import type { Ask, Method } from '#libs/matching/src/index.js';
import { resultsWanted } from '../results/missing-of.js';
import { dimensionsNeeded, isMeasured, measuredGeometry } from './dimensions.js';

const PEAK = 'peak-load';
const STRENGTH = 'peak-stress';

/** The results that have to come from the bench. A strength that follows from the peak and the lengths is computed, and the peak typed instead. */
export function resultsNeeded(method: Method, ask: Ask): JobView['resultsNeeded'] {
  const wanted = resultsWanted(method, ask).map(({ key }) => key);
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

/** The strength that follows from the peak and the measured lengths, with the formula behind it; null where it cannot be said. */
export function strengthFrom(
  peak: number,
  method: Method,
  ask: Ask,
  dimensions: Readonly<Record<string, readonly number[]>>,
): (Omit<TypedFigure, 'typed'> & { basis: Record<string, unknown> }) | null {
  if (!isComputed(method) || !isMeasured(dimensionsNeeded(method, ask), dimensions)) return null;
  const geometry = measuredGeometry(ask, dimensions);
  const plastic = method.testType === 'torsion' && method.reduction['torsionStress'] === 'plastic';
  const { value: perUnit, formula, inputs } = plastic ? plasticTorque(1, geometry) : loadAt(1, geometry, method);
  const value = peak / perUnit;
  if (!Number.isFinite(value)) return null;
  return { key: STRENGTH, value, unit: resultWords(STRENGTH, method.testType).unit, basis: { formula, peak, inputs } };
}
