import type { ReductionRecipe } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';
import { bendingModulus, loadArm, sectionArea, torsionStressPerTorque, withSizes } from './section.js';
import type { FromDimensions } from './section.js';
import type { CurveAxes } from './reduction-outcome.js';

/** How the recorded load becomes what is drawn upwards. */
export interface UpAxis {
  readonly yName: CurveAxes['yName'];
  readonly yUnit: string;
  /** y = load · factor. */
  readonly factor: FromDimensions;
}

/**
 * Stress per load for each kind of test: F/A; M/W in bending; F/(w·l) for a lap joint; 0.75F/(bh) for a short beam
 * (ASTM D2344); F/width for peel; F/thickness for tear; 16T/(πd³) in torsion; the load itself for a component.
 */
export function upAxisOf(recipe: ReductionRecipe, dimensions: SpecimenDimensions): UpAxis {
  const stress = (factor: FromDimensions): UpAxis => ({ yName: 'stress', yUnit: 'MPa', factor });
  switch (recipe.kind) {
    case 'tension':
    case 'compression':
      return stress(inverse(sectionArea(recipe.section, dimensions)));
    case 'flexure-3-point':
    case 'flexure-4-point':
      return stress(bendingFactor(recipe, dimensions));
    case 'lap-shear':
      return stress(inverse(overlapArea(dimensions)));
    case 'short-beam-shear':
      return stress(withSizes(dimensions, ['widthMm', 'thicknessMm'], (width, depth) => 0.75 / (width * depth)));
    case 'peel':
      return {
        yName: 'load-per-width',
        yUnit: 'N/mm',
        factor: inverse(withSizes(dimensions, ['widthMm'], (width) => width)),
      };
    case 'tear':
      return {
        yName: 'load-per-thickness',
        yUnit: 'N/mm',
        factor: inverse(withSizes(dimensions, ['thicknessMm'], (size) => size)),
      };
    case 'torsion':
      return stress(torsionStressPerTorque(recipe.section, dimensions, recipe.torsionStress));
    case 'component':
      return { yName: 'load', yUnit: 'N', factor: 1 };
  }
}

function overlapArea(dimensions: SpecimenDimensions): FromDimensions {
  return dimensions.areaMm2 ?? withSizes(dimensions, ['widthMm', 'overlapMm'], (width, overlap) => width * overlap);
}

/** Bending moment per force is a/2, whether one or two loads act (a: from support to the nearer load). */
function bendingFactor(recipe: ReductionRecipe, dimensions: SpecimenDimensions): FromDimensions {
  if (!recipe.bending) return { lacks: 'bending' };
  const arm = loadArm(recipe.kind, recipe.bending);
  const modulus = bendingModulus(recipe.section, dimensions);
  if (typeof arm !== 'number') return arm;
  return typeof modulus === 'number' ? arm / (2 * modulus) : modulus;
}

function inverse(size: FromDimensions): FromDimensions {
  return typeof size === 'number' ? 1 / size : size;
}
