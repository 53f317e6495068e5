import type { BendingRecipe, ReductionRecipe, Section, TestKind } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';

/** A figure from the dimensions, or the name of the dimension (or parameter) that it lacks. */
export type FromDimensions = number | { readonly lacks: string };

/** Area of the section, mm². */
export function sectionArea(section: Section, dimensions: SpecimenDimensions): FromDimensions {
  if (dimensions.areaMm2 !== undefined) return dimensions.areaMm2;
  if (section === 'given-area') return { lacks: 'areaMm2' };
  if (section === 'rectangle')
    return withSizes(dimensions, ['widthMm', 'thicknessMm'], (width, thickness) => width * thickness);
  if (section === 'round') return withSizes(dimensions, ['diameterMm'], (diameter) => (Math.PI * diameter ** 2) / 4);
  return withSizes(
    dimensions,
    ['diameterMm', 'innerDiameterMm'],
    (outer, inner) => (Math.PI * (outer ** 2 - inner ** 2)) / 4,
  );
}

/** Elastic section modulus for bending, mm³: bh²/6, πd³/32, π(D⁴−d⁴)/(32D) (textbook). */
export function bendingModulus(section: Section, dimensions: SpecimenDimensions): FromDimensions {
  if (section === 'round') return withSizes(dimensions, ['diameterMm'], (diameter) => (Math.PI * diameter ** 3) / 32);
  if (section === 'tube') return withSizes(dimensions, ['diameterMm', 'innerDiameterMm'], tubeBendingModulus);
  return withSizes(dimensions, ['widthMm', 'thicknessMm'], (width, depth) => (width * depth ** 2) / 6);
}

function tubeBendingModulus(outer: number, inner: number): number {
  return (Math.PI * (outer ** 4 - inner ** 4)) / (32 * outer);
}

/** Height of the section in the plane of bending, mm. */
export function bendingDepth(section: Section, dimensions: SpecimenDimensions): FromDimensions {
  return withSizes(
    dimensions,
    [section === 'rectangle' || section === 'given-area' ? 'thicknessMm' : 'diameterMm'],
    (depth) => depth,
  );
}

/** Distance from a support to the nearer load, mm: half the span, or half of what the inner span leaves. */
export function loadArm(kind: TestKind, bending: BendingRecipe): FromDimensions {
  if (kind === 'flexure-3-point') return bending.spanMm / 2;
  return bending.innerSpanMm === undefined
    ? { lacks: 'bending.innerSpanMm' }
    : (bending.spanMm - bending.innerSpanMm) / 2;
}

/**
 * Outer-fibre strain per mm of deflection, 1/mm, from the elastic line of a simply supported beam (textbook):
 * 12h/(3L²−4a²) at mid-span, 3h/(a(3L−4a)) under the loads. For a = L/2 both are 6h/L² (ISO 178);
 * thirds give 4.70 h/L² and half span 4.36 h/L² at mid-span (ASTM D6272).
 */
export function strainPerDeflection(depthMm: number, armMm: number, { spanMm, deflectionAt }: BendingRecipe): number {
  if (deflectionAt === 'mid-span') return (12 * depthMm) / (3 * spanMm ** 2 - 4 * armMm ** 2);
  return (3 * depthMm) / (armMm * (3 * spanMm - 4 * armMm));
}

/**
 * Shear stress at the surface per N·m of torque, MPa/(N·m): 16T/(πd³) elastic, 12T/(πd³) fully plastic, 16TD/(π(D⁴−d⁴)) tube.
 */
export function torsionStressPerTorque(
  section: Section,
  dimensions: SpecimenDimensions,
  way: ReductionRecipe['torsionStress'],
): FromDimensions {
  if (section === 'tube') {
    return withSizes(
      dimensions,
      ['diameterMm', 'innerDiameterMm'],
      (outer, inner) => (16e3 * outer) / (Math.PI * (outer ** 4 - inner ** 4)),
    );
  }
  return withSizes(
    dimensions,
    ['diameterMm'],
    (diameter) => (way === 'plastic' ? 12e3 : 16e3) / (Math.PI * diameter ** 3),
  );
}

/** Works out a figure when every size that it needs is there. */
export function withSizes(
  dimensions: SpecimenDimensions,
  names: readonly (keyof SpecimenDimensions)[],
  figure: (first: number, second: number) => number,
): FromDimensions {
  const lacking = names.find((name) => dimensions[name] === undefined);
  if (lacking) return { lacks: lacking };
  return figure(dimensions[names[0]!]!, dimensions[names[1] ?? names[0]!]!);
}
