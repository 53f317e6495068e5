import { numberProblem, refuseIfAny } from '#libs/errors/src/index.js';

/**
 * r of a digital indicator, in the unit of its arguments: one increment while the reading is steady to one increment, else
 * half of the fluctuation plus one increment. ISO 7500-1:2018 6.3 (from memory).
 *
 * @param increment smallest step of the display, above 0
 * @param fluctuation highest minus lowest reading at rest without force, at least 0
 * @throws {InvalidInput} when a figure is out of its bounds
 */
export function indicatorResolution(increment: number, fluctuation: number): number {
  refuseIfAny([
    numberProblem('increment', increment, { unit: '', above: 0 }),
    numberProblem('fluctuation', fluctuation, { unit: '', min: 0 }),
  ]);
  return fluctuation <= increment ? increment : fluctuation / 2 + increment;
}
