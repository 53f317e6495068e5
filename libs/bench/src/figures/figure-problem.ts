import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { figureBounds } from './figure-bounds.js';
import type { Carrier, FigureBounds } from './figure-bounds.js';
import type { TypedFigure } from './typed-figure.js';

const SHOWN_DIGITS = 4;

/**
 * What is wrong with a typed figure, in the unit in which it was typed; null when it lies within its bounds.
 *
 * @param field path of the value, as the sender wrote it
 */
export function figureProblem(figure: TypedFigure, field: string, carrier: Carrier): FieldProblem | null {
  const bounds = figureBounds(figure.key, figure.unit, carrier);
  if (isWithin(figure.value, bounds)) return null;
  const { unit, factor } = figure.typed;
  const found = Number((figure.value / factor).toPrecision(FOUND_DIGITS));
  return fieldProblem({ field, found, allowed: allowedWords(bounds, factor), unit }, bounds.advice);
}

/** Takes back the rounding of the way to the kept unit and back. */
const FOUND_DIGITS = 12;

function isWithin(value: number, { min, above, max }: FigureBounds): boolean {
  const isHighEnough = (min === undefined || value >= min) && (above === undefined || value > above);
  return Number.isFinite(value) && isHighEnough && value <= max;
}

function allowedWords({ min, above, max }: FigureBounds, factor: number): string {
  const shown = (value: number) => formatNumber(value / factor, SHOWN_DIGITS);
  const from = above === undefined ? `at least ${shown(min ?? 0)}` : `more than ${shown(above)}`;
  return `a number, ${from} and at most ${shown(max)}`;
}
