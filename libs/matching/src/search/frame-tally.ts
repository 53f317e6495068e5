import type { Frame } from '../item.js';
import { blankParts } from '../parts.js';
import { checksOf, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { RequestContext } from './request-context.js';
import type { Search } from './search.js';

/** Checks that look at no part at all, and those that look at nothing but the frame. */
const LAB_ALONE = checksOf([]);
const FRAME = checksOf(['frame']);
export const FRAME_ALONE = [...LAB_ALONE, ...FRAME];

/** What the lab fails and cautions whatever frame is taken. */
export function labTally(context: RequestContext): Tally {
  return tally(LAB_ALONE, blankParts(), context);
}

/** What lab and frame alone fail and caution. */
export function frameTally(frame: Frame, { context, ofLab }: Pick<Search, 'context' | 'ofLab'>): Tally {
  const { fails, cautions, severity } = tally(FRAME, { ...blankParts(), frame }, context);
  return { fails: fails | ofLab.fails, cautions: cautions | ofLab.cautions, severity: severity + ofLab.severity };
}
