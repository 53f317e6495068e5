import type { ForceReadings, ForceStep } from './force-readings.js';

/** The relative errors at one step, in percent; ISO 7500-1:2018 6.4 and 6.5 (formulas from memory). */
export interface ForceErrors {
  /** F̄, the mean of the three runs, in the readings' unit. */
  meanOfRuns: number;
  /** q. */
  indicationPct: number;
  /** b. */
  repeatabilityPct: number;
  /** v; null when there is no falling run. */
  reversibilityPct: number | null;
  /** f0, the same at every step of a range. */
  zeroPct: number;
  /** a. */
  resolutionPct: number;
  /** The force as a multiple of the resolution. */
  inResolutions: number;
}

/**
 * Relative errors of one step.
 *
 * q = (F_i − F̄)/F̄ with the indicated force held, (F̄_i − F)/F with the true one; b = (max − min of the runs)/F, where F is
 * the true force (F̄ when it was not held); v = (falling − third run)/third run, or over F when that was held;
 * f0 = F_i0/F_N; a = r/F at the nominal force. All times 100.
 */
export function forceErrors(step: ForceStep, { held, capacity, resolution, zeroResidual }: ForceReadings): ForceErrors {
  const { nominal, runs, falling } = step;
  const meanOfRuns = runs.reduce((sum, run) => sum + run, 0) / runs.length;
  const lastRun = runs.at(-1)!;
  const trueForce = held === 'indicated' ? meanOfRuns : nominal;
  const indicated = held === 'indicated' ? nominal : meanOfRuns;
  const reversal = held === 'indicated' ? lastRun : nominal;
  return {
    meanOfRuns,
    indicationPct: (100 * (indicated - trueForce)) / trueForce,
    repeatabilityPct: (100 * (Math.max(...runs) - Math.min(...runs))) / trueForce,
    reversibilityPct: falling === null ? null : (100 * (falling - lastRun)) / reversal,
    zeroPct: (100 * zeroResidual) / capacity,
    resolutionPct: (100 * resolution) / nominal,
    inResolutions: nominal / resolution,
  };
}
