import type { ResultKey } from '../recipe/recipe.js';
import type { DoubtSources } from './doubt-sources.js';

export type Source = Exclude<keyof DoubtSources, 'repeatability'>;

/** Exponent with which each source enters y = c·Π xᵖ; its sensitivity in relative terms. */
export type Exponents = Readonly<Partial<Record<Source, number>>>;

/** Which product a result is: F/A, M/W, 16T/(πd³), F/width, F/thickness, F/(width·overlap), or the load itself. */
export type ResultModel = 'axial' | 'bending' | 'torsion' | 'per-width' | 'per-thickness' | 'lap-shear' | 'load';

/** Every size of every section is listed: only those of the specimen's own section have a doubt to give. */
const STRESS: Readonly<Record<ResultModel, Exponents>> = {
  axial: { force: 1, area: -1, width: -1, thickness: -1, diameter: -2 },
  bending: { force: 1, span: 1, width: -1, thickness: -2, diameter: -3 },
  torsion: { force: 1, diameter: -3 },
  'per-width': { force: 1, width: -1 },
  'per-thickness': { force: 1, thickness: -1 },
  'lap-shear': { force: 1, area: -1, width: -1, overlap: -1 },
  load: { force: 1 },
};

const STRAIN: Readonly<Partial<Record<ResultModel, Exponents>>> = {
  axial: { extension: 1, gaugeLength: -1 },
  bending: { extension: 1, thickness: 1, diameter: 1, span: -2 },
  torsion: { extension: 1, diameter: 1, gaugeLength: -1 },
};

/** Results that depend on nothing but load and travel, whatever the test. */
const PLAIN: Readonly<Partial<Record<ResultKey, Exponents>>> = {
  'peak-load': { force: 1 },
  'travel-at-peak': { extension: 1 },
  stiffness: { force: 1, extension: -1 },
  'energy-to-peak': { force: 1, extension: 1 },
  'energy-to-break': { force: 1, extension: 1 },
  'elongation-after-fracture': { extension: 1, gaugeLength: -1 },
};

/** Results that a load is behind: stresses, and forces per width or thickness. */
export const STRESSES: readonly ResultKey[] = [
  'peak-stress',
  'stress-at-break',
  'offset-yield',
  'upper-yield',
  'lower-yield',
  'stress-at-strain',
  'mean-peel',
  'least-peel',
  'highest-peel',
  'mean-tear-peaks',
  'median-tear-peaks',
];
const STRAINS: readonly ResultKey[] = [
  'strain-at-peak',
  'strain-at-break',
  'plastic-strain-at-peak',
  'plastic-strain-at-break',
];

/**
 * How a result hangs on what was measured, from its formula. A tube's area is no product of its diameters: give its
 * doubt as that of the area.
 *
 * @param perStrain relative change of a stress for one of the strain that it is read at
 * @returns null for a result that follows no such product (hardening, reduction of area)
 */
export function exponentsOf(key: ResultKey, model: ResultModel, perStrain = 0): Exponents | null {
  const plain = PLAIN[key];
  if (plain) return plain;
  const stress = STRESS[model];
  const strain = STRAIN[model];
  if (STRESSES.includes(key)) return strain && perStrain !== 0 ? joined(stress, strain, perStrain) : stress;
  if (!strain) return null;
  if (STRAINS.includes(key)) return strain;
  if (key === 'modulus') return joined(stress, strain, -1);
  return key === 'work-density-to-break' ? joined(stress, strain, 1) : null;
}

/** stress · strainᵖ, so that what enters both is counted once. */
function joined(stress: Exponents, strain: Exponents, power: number): Exponents {
  const sum: Partial<Record<Source, number>> = { ...stress };
  for (const [source, exponent] of Object.entries(strain) as [Source, number][])
    sum[source] = (sum[source] ?? 0) + power * exponent;
  return sum;
}
