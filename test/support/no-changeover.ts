import type { Changeover } from '#libs/planning/src/index.js';

/** Nothing costs changeover time. */
export const NO_CHANGEOVER: Changeover = {
  byLinkMin: {},
  checkedLinks: [],
  checkMin: 0,
  rampCPerMin: 1,
  soakMin: 0,
  families: null,
};
