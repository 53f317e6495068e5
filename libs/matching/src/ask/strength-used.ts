import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { Ask, StrengthUsed } from './ask.js';
import { strengthUnitOf } from './ask-fields.js';
import type { Material } from '../register/material.js';
import type { Method } from '../register/method.js';

/** Which property stands in where a material has no band of the wanted one; the sentence says so. */
const STAND_INS: Partial<Record<Method['strength'], readonly Method['strength'][]>> = {
  flexural: ['tensile'],
  compressive: ['tensile'],
};

/**
 * The strength band that the load estimate starts from: declared before library; a stand-in property is named as such.
 *
 * @returns the band in the unit of the method's load formula, or the problem of the field `materialId`
 */
export function strengthUsed(ask: Ask, method: Method, material: Material | null): StrengthUsed | FieldProblem {
  const unit = strengthUnitOf(method);
  if (ask.strength)
    return { ...ask.strength, property: method.strength, unit, source: 'declared by the requester', declared: true };
  const wanted = [method.strength, ...(STAND_INS[method.strength] ?? [])];
  const band = wanted.flatMap(
    (property) => material?.strengths.filter((each) => each.property === property && each.unit === unit) ?? [],
  )[0];
  if (band) {
    const standsIn =
      band.property === method.strength ? '' : `; ${band.property} strength stands in for ${method.strength}`;
    return {
      low: band.low,
      high: band.high,
      property: band.property,
      unit,
      source: `${band.source}${standsIn}`,
      declared: false,
    };
  }
  const advice = 'Declare a strength band or the highest load.';
  const allowed = `a material with a ${method.strength} strength in ${unit}`;
  return fieldProblem({ field: 'materialId', found: material?.name ?? ask.materialId, allowed, unit: '' }, advice);
}
