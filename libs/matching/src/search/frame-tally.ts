import type { Frame } from '../item.js';
import type { Parts } from '../parts.js';
import { checksOf, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { RequestContext } from './request-context.js';

/** Checks that look at nothing but the frame, and those that look at no part at all. */
export const FRAME_ALONE = [...checksOf([]), ...checksOf(['frame'])];

/** What lab and frame alone fail and caution. */
export function frameTally(frame: Frame, context: RequestContext): Tally {
  return tally(FRAME_ALONE, { frame } as Partial<Parts> as Parts, context);
}
