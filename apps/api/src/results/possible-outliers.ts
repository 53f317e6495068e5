import { testGrubbs } from '#libs/reduction/src/index.js';

/** Of three values two that are near each other always make the third look far off. */
const FEWEST = 4;

interface Found {
  label: string;
  value: number;
}

/**
 * Specimens whose value lies further off than chance explains (Grubbs, two-sided, 5 %). The test looks at one value: two that lie off
 * together hide each other. A value that is off by no more than the step of the report is not suspected.
 *
 * @param step smallest step in which the value is reported, in its unit; null where there is none
 */
export function possibleOutliers(found: readonly Found[], step: number | null): string[] {
  const values = found.map(({ value }) => value);
  const grubbs = values.length < FEWEST ? null : testGrubbs(values);
  if (!grubbs?.isPossibleOutlier) return [];
  const suspect = found[grubbs.suspectIndex]!;
  const others = found.filter((each) => each !== suspect).map(({ value }) => Math.abs(value - suspect.value));
  return Math.min(...others) <= (step ?? 0) * (1 + Number.EPSILON * 8) ? [] : [suspect.label];
}
