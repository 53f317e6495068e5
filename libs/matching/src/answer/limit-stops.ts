import type { Needs } from '../ask/needs.js';
import type { MatchSettings } from '../ask/settings.js';
import { openingsOf } from '../rules/openings.js';
import type { Parts } from '../rules/parts.js';
import type { LimitStops } from './answer.js';

/**
 * Where to set the mechanical stops: the lab's clearance beyond what the test needs, but never beyond the frame, nor so low that the
 * ends could meet (halfway between the least opening and the touch at the latest).
 */
export function limitStopsOf(parts: Parts, needs: Needs, { clearanceMm }: MatchSettings): LimitStops {
  const { startMm, leastMm, mostMm, touchMm } = openingsOf(parts, needs);
  const { openingMinMm, openingMaxMm } = parts.frame.details;
  const halfway = (leastMm + Math.max(touchMm, openingMinMm)) / 2;
  return {
    startOpeningMm: startMm,
    lowerStopMm: Math.max(openingMinMm, leastMm - clearanceMm, halfway),
    upperStopMm: Math.min(openingMaxMm, mostMm + clearanceMm),
  };
}
