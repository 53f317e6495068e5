import type { Curve } from '../curve/curve.js';
import type { ReductionRecipe } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';
import { bendingDepth, loadArm, strainPerDeflection, withSizes } from './section.js';
import type { FromDimensions } from './section.js';
import type { CurveAxes } from './reduction-outcome.js';

/** How the recorded travel becomes what is drawn along: x = values · factor − start. */
export interface AlongAxis {
  readonly xName: CurveAxes['xName'];
  readonly xUnit: string;
  readonly values: Float64Array | null;
  readonly factor: number;
  /** A travel counts from its first value, an extension or strain as recorded. */
  readonly fromStart: boolean;
  readonly isCrosshead: boolean;
  /** What strain lacks, where only travel (or nothing) can be drawn. */
  readonly lacks: string | null;
}

/** Strain where the curve and the dimensions give it, else travel, else the number of the row. */
export function alongAxisOf(curve: Curve, recipe: ReductionRecipe, dimensions: SpecimenDimensions): AlongAxis {
  switch (recipe.kind) {
    case 'tension':
    case 'compression':
      return axialStrain(curve, recipe, dimensions);
    case 'flexure-3-point':
    case 'flexure-4-point':
      return bendingStrain(curve, recipe, dimensions);
    case 'torsion':
      return shearStrain(curve, dimensions);
    default:
      return travel(curve, null);
  }
}

const extensionOf = (curve: Curve, factor: number): AlongAxis => ({
  xName: 'strain',
  xUnit: 'mm/mm',
  values: curve.extensionMm!,
  factor,
  fromStart: false,
  isCrosshead: false,
  lacks: null,
});

/** Our own gauge length goes before a strain that another program computed; the crosshead comes last. */
function axialStrain(curve: Curve, { kind }: ReductionRecipe, dimensions: SpecimenDimensions): AlongAxis {
  const { gaugeLengthMm, gripDistanceMm, heightMm } = dimensions;
  if (curve.extensionMm && gaugeLengthMm !== undefined) return extensionOf(curve, 1 / gaugeLengthMm);
  if (curve.strain) return asStrain(curve.strain);
  const lengthMm = kind === 'compression' ? heightMm : gripDistanceMm;
  if (curve.displacementMm && lengthMm !== undefined) {
    return { ...asStrain(curve.displacementMm), factor: 1 / lengthMm, fromStart: true, isCrosshead: true };
  }
  return travel(curve, curve.extensionMm ? 'gaugeLengthMm' : kind === 'compression' ? 'heightMm' : 'gripDistanceMm');
}

function asStrain(values: Float64Array): AlongAxis {
  return { xName: 'strain', xUnit: 'mm/mm', values, factor: 1, fromStart: false, isCrosshead: false, lacks: null };
}

function bendingStrain(curve: Curve, recipe: ReductionRecipe, dimensions: SpecimenDimensions): AlongAxis {
  const deflection = curve.extensionMm ?? curve.displacementMm;
  if (!deflection) return curve.strain ? asStrain(curve.strain) : travel(curve, null);
  const factor = deflectionFactor(recipe, dimensions);
  if (typeof factor !== 'number') return travel(curve, factor.lacks);
  return { ...asStrain(deflection), factor, fromStart: !curve.extensionMm, isCrosshead: !curve.extensionMm };
}

function deflectionFactor(recipe: ReductionRecipe, dimensions: SpecimenDimensions): FromDimensions {
  if (!recipe.bending) return { lacks: 'bending' };
  const arm = loadArm(recipe.kind, recipe.bending);
  const depth = bendingDepth(recipe.section, dimensions);
  if (typeof arm !== 'number') return arm;
  return typeof depth === 'number' ? strainPerDeflection(depth, arm, recipe.bending) : depth;
}

/** γ = θ·r/L at the surface, with θ in radians (textbook). */
function shearStrain(curve: Curve, dimensions: SpecimenDimensions): AlongAxis {
  if (!curve.angleDeg) return { ...NOTHING, lacks: 'angleDeg' };
  const perDegree = withSizes(
    dimensions,
    ['diameterMm', 'gaugeLengthMm'],
    (diameter, length) => (Math.PI * diameter) / (360 * length),
  );
  const angle: AlongAxis = { ...NOTHING, xName: 'angle', xUnit: '°', values: curve.angleDeg, fromStart: true };
  if (typeof perDegree !== 'number') return { ...angle, lacks: perDegree.lacks };
  return { ...angle, xName: 'shear-strain', xUnit: 'mm/mm', factor: perDegree };
}

const NOTHING: AlongAxis = {
  xName: 'row',
  xUnit: '1',
  values: null,
  factor: 1,
  fromStart: false,
  isCrosshead: false,
  lacks: null,
};

function travel(curve: Curve, lacks: string | null): AlongAxis {
  const values = curve.displacementMm ?? curve.extensionMm ?? null;
  if (!values) return { ...NOTHING, lacks: lacks ?? 'displacementMm' };
  return {
    ...NOTHING,
    xName: 'travel',
    xUnit: 'mm',
    values,
    fromStart: values === curve.displacementMm,
    isCrosshead: values === curve.displacementMm,
    lacks,
  };
}
