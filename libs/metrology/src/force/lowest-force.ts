import { numberProblem, refuseIfAny } from '#libs/errors/src/index.js';
import { FORCE_CLASSES } from '#libs/accuracy/src/index.js';

/**
 * The lowest force of each class that the resolution alone allows: 400, 200, 100 and 67 resolutions (ISO 7500-1:2018,
 * from memory). Readings there may still fail the class.
 *
 * @param resolution r in N or N·m, above 0
 * @returns in the unit of the resolution, the best class first
 * @throws {InvalidInput} when the resolution is not above 0
 */
export function lowestForceByResolution(resolution: number): { className: string; lowest: number }[] {
  refuseIfAny([numberProblem('resolution', resolution, { unit: '', above: 0 })]);
  return FORCE_CLASSES.map(({ className, lowestInResolutions }) => ({
    className,
    lowest: lowestInResolutions * resolution,
  }));
}
