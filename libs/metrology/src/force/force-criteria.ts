import { isWithinLimit, reachesLimit } from '../within-limit.js';
import type { ForceClass } from '#libs/accuracy/src/index.js';
import type { ForceErrors } from './force-errors.js';

/** One figure against one limit of a class. */
export interface ForceFinding {
  /** The standard's letter, or `lowest-force`. */
  criterion: 'q' | 'b' | 'v' | 'f0' | 'a' | 'lowest-force';
  /** In percent, for `lowest-force` in resolutions; null when it was not determined. */
  found: number | null;
  limit: number;
  met: boolean;
}

type ForceCriterion = (errors: ForceErrors, limits: ForceClass) => ForceFinding;

const atMost = (criterion: ForceFinding['criterion'], found: number | null, limit: number): ForceFinding => ({
  criterion,
  found,
  limit,
  met: found === null || isWithinLimit(found, limit),
});

/**
 * What ISO 7500-1 table 2 asks of every step, from top to bottom. Reversibility counts only where it was measured: the
 * standard asks for it on request, and a class can be given without it.
 */
export const FORCE_CRITERIA: readonly ForceCriterion[] = [
  (errors, limits) => atMost('q', errors.indicationPct, limits.indicationPct),
  (errors, limits) => atMost('b', errors.repeatabilityPct, limits.repeatabilityPct),
  (errors, limits) => atMost('v', errors.reversibilityPct, limits.reversibilityPct),
  (errors, limits) => atMost('f0', errors.zeroPct, limits.zeroPct),
  (errors, limits) => atMost('a', errors.resolutionPct, limits.resolutionPct),
  ({ inResolutions }, { lowestInResolutions }) => ({
    criterion: 'lowest-force',
    found: inResolutions,
    limit: lowestInResolutions,
    met: reachesLimit(inResolutions, lowestInResolutions),
  }),
];

/** Every criterion of a class at one step. */
export function forceFindings(errors: ForceErrors, limits: ForceClass): ForceFinding[] {
  return FORCE_CRITERIA.map((criterion) => criterion(errors, limits));
}
