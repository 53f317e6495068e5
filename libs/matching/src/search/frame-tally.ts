import type { Frame } from '../register/item.js';
import { blankParts } from '../rules/parts.js';
import { FRAME_ALONE_CHECKS, LAB_CHECKS, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { RequestContext } from './request-context.js';
import { ruleSets } from './rule-set.js';

/** What the lab fails and cautions whatever frame is taken. */
export function labTally(context: RequestContext): Tally {
  return tally(LAB_CHECKS, blankParts(), context);
}

/** What lab and frame alone fail and caution. */
export function frameTally(frame: Frame, context: RequestContext, ofLab: Tally): Tally {
  const { fails, cautions, severity } = tally(FRAME_ALONE_CHECKS, { ...blankParts(), frame }, context);
  return {
    fails: ruleSets.union(fails, ofLab.fails),
    cautions: ruleSets.union(cautions, ofLab.cautions),
    severity: severity + ofLab.severity,
  };
}
