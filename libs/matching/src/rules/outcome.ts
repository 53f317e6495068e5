/** What a check comes to, from the best to the worst. */
export type Outcome = typeof PASS | typeof CAUTION | typeof FAIL;
export const PASS = 0;
export const CAUTION = 1;
export const FAIL = 2;

/** The worse of some outcomes. */
export function worst(a: Outcome, b: Outcome, c: Outcome = PASS): Outcome {
  const two = a > b ? a : b;
  return two > c ? two : c;
}

/** Rounding of the sum, not a tolerance of the trade: a limit that is met exactly counts as met. */
const EDGE = 1e-9;

/** Whether what is there reaches what is needed. */
export function reaches(available: number, required: number): boolean {
  return !(available < required - EDGE * Math.abs(required));
}
