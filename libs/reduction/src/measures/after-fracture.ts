import { lacking, measured } from './prepared-test.js';
import type { Measure } from './prepared-test.js';
import { sectionArea } from './section.js';

/** A break nearer to a mark than this share of L0 is doubtful (ISO 6892-1, from memory). */
const NEAREST_BREAK = 1 / 3;

/** A = (Lu − L0)/L0, fraction, from the marks measured by hand (ISO 6892-1). It rests on no point of the curve. */
export const elongationAfterFracture: Measure = ({ dimensions }) => {
  const { originalGaugeLengthMm: original, finalGaugeLengthMm: final, breakToMarkMm } = dimensions;
  if (original === undefined) return lacking('dimension-missing', 'originalGaugeLengthMm');
  if (final === undefined) return lacking('dimension-missing', 'finalGaugeLengthMm');
  const allowed = original * NEAREST_BREAK;
  const isNear = breakToMarkMm !== undefined && breakToMarkMm < allowed;
  const flags = isNear ? [{ code: 'break-near-mark' as const, found: breakToMarkMm, allowed, unit: 'mm' }] : [];
  return measured((final - original) / original, 'mm/mm', [], flags);
};

/** Z = (S0 − Su)/S0, fraction (ISO 6892-1). It rests on no point of the curve. */
export const reductionOfArea: Measure = ({ dimensions, recipe }) => {
  const area = sectionArea(recipe.section, dimensions);
  if (typeof area !== 'number') return lacking('dimension-missing', area.lacks);
  if (dimensions.finalAreaMm2 === undefined) return lacking('dimension-missing', 'finalAreaMm2');
  return measured((area - dimensions.finalAreaMm2) / area, 'mm/mm', []);
};
