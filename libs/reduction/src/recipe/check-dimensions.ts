import { numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { SpecimenDimensions } from './specimen-dimensions.js';

/** What is wrong with the dimensions of a specimen: each one given must be more than zero, and a bore smaller than its tube. */
export function checkDimensions(dimensions: SpecimenDimensions): FieldProblem[] {
  const { diameterMm, innerDiameterMm } = dimensions;
  const given = Object.entries(dimensions).filter(([, value]) => value !== undefined);
  return [
    ...given.map(([field, value]) =>
      numberProblem(field, value, { above: 0, unit: field.endsWith('Mm2') ? 'mm²' : 'mm' }),
    ),
    diameterMm !== undefined && innerDiameterMm !== undefined
      ? numberProblem('innerDiameterMm', innerDiameterMm, { below: diameterMm, unit: 'mm' })
      : null,
  ].filter((problem) => problem !== null);
}
