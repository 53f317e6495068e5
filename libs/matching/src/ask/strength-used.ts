import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { Ask, StrengthUsed } from './ask.js';
import { strengthUnitOf } from './ask-fields.js';
import type { Material, MaterialGroup, StrengthBand, StrengthProperty } from '../register/material.js';
import type { Method } from '../register/method.js';
import type { MatchSettings } from './settings.js';

/**
 * Where a material has no band of the wanted property, its tensile strength stands in, with the high end so many times as high: a
 * metal bends to its plastic hinge at 1.5 times the elastic load (textbook), a plastic is bent or compressed at up to twice its tensile
 * strength, and what is brittle or torn across its fibres is compressed at a multiple of it (common practice, no source). A foam's
 * tensile strength says nothing of how it is compressed.
 */
function standInReach({ strength }: Method, { group, brittle }: Material): number | null {
  if (strength === 'flexural') return 2;
  if (strength !== 'compressive' || group === 'foam') return null;
  return brittle || group === 'composite' ? 4 : 2;
}

/** Polymers grow stronger by about this share for each kelvin below room temperature (common practice, no source). */
const COLD_RISE_PER_K = 0.015;
const POLYMERS: readonly MaterialGroup[] = ['plastic', 'film', 'elastomer', 'adhesive', 'foam', 'packaging'];

/**
 * The strength band that the load estimate starts from: declared before library. A stand-in property is named as such and reaches
 * further up; so does a band of room temperature in the cold. Both are assumed.
 *
 * @returns the band in the unit of the method's load formula, or the problem of the field `materialId`
 */
export function strengthUsed(
  ask: Ask,
  method: Method,
  material: Material | null,
  settings: Pick<MatchSettings, 'roomC' | 'roomMinC' | 'roomMaxC'>,
): StrengthUsed | FieldProblem {
  const unit = strengthUnitOf(method);
  if (ask.strength)
    return {
      ...ask.strength,
      property: method.strength,
      unit,
      source: 'declared by the requester',
      declared: true,
      assumed: false,
    };
  const bandOf = (property: StrengthProperty) =>
    material?.strengths.find((each) => each.property === property && each.unit === unit);
  const own = bandOf(method.strength);
  if (material && own) return atTemperature(own, 1, ask, material, settings);
  const reach = material && standInReach(method, material);
  const standIn = reach === null ? undefined : bandOf('tensile');
  if (material && reach && standIn) {
    const source = `${standIn.source}; tensile strength stands in for ${method.strength}, up to ${reach} times`;
    return { ...atTemperature({ ...standIn, source }, reach, ask, material, settings), assumed: true };
  }
  const advice = 'Declare a strength band or the highest load.';
  const allowed = `a material with a ${method.strength} strength in ${unit}`;
  return fieldProblem({ field: 'materialId', found: material?.name ?? ask.materialId, allowed, unit: '' }, advice);
}

/** Bands of the library are of room temperature. */
function atTemperature(
  { low, high, property, unit, source }: StrengthBand,
  reach: number,
  { temperatureC }: Ask,
  { group }: Material,
  { roomC, roomMinC, roomMaxC }: Pick<MatchSettings, 'roomC' | 'roomMinC' | 'roomMaxC'>,
): StrengthUsed {
  const band = { low, high: high * reach, property, unit, source, declared: false };
  if (temperatureC === null || (temperatureC >= roomMinC && temperatureC <= roomMaxC))
    return { ...band, assumed: false };
  const colderK = POLYMERS.includes(group) ? Math.max(0, roomC - temperatureC) : 0;
  return {
    ...band,
    high: band.high * (1 + COLD_RISE_PER_K * colderK),
    source: `${source}; of room temperature${colderK > 0 ? `, ${COLD_RISE_PER_K * 100} % more for each kelvin below` : ''}`,
    assumed: true,
  };
}
