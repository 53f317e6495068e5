import type { LinkRole, MatchSettings } from '#libs/matching/src/index.js';

/** The link of the train that needs a shift check after another unit was fitted. */
export const CHECKED_LINKS: readonly LinkRole[] = ['load-cell'];

/** Minutes to fit another unit, by place in the train: the lab's settings per kind of item. */
export function minutesByLink(changeMin: MatchSettings['changeMin']): Record<LinkRole, number> {
  return {
    'load-cell': changeMin['load-cell'],
    'upper-adapter': changeMin.adapter,
    'upper-adapter-2': changeMin.adapter,
    'lower-adapter': changeMin.adapter,
    'lower-adapter-2': changeMin.adapter,
    upper: changeMin.grip,
    lower: changeMin.grip,
    ends: changeMin.grip,
    faces: changeMin['jaw-face'],
    extensometer: changeMin.extensometer,
    chamber: changeMin.chamber,
    guard: changeMin.guard,
    thermocouple: changeMin.transducer,
  };
}
