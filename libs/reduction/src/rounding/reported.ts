import { roundToSignificant, roundToStep } from './round-decimal.js';

/** How a method reports a result: to a smallest step, in the unit of the result, or to so many significant digits; null where it does not say. */
export interface Reporting {
  readonly step: number | null;
  readonly digits?: number | null | undefined;
}

/** Digits of a result of which the method says nothing. */
const USUAL_DIGITS = 4;

/** A value as its method reports it, with the zeros that carry meaning. */
export function reported(value: number, { step, digits }: Reporting): string {
  return step === null ? roundToSignificant(value, digits ?? USUAL_DIGITS) : roundToStep(value, step);
}
