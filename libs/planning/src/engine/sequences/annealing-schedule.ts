import type { Random } from '../random.js';

/**
 * Constants of an annealing schedule; all were set by trials. `phase`: iterations of the first phase. `growth`: how much longer
 * each phase is than the one before. `temperature`: this share of the cost may be added at the start of a phase with a
 * probability of 1/e.
 */
export interface AnnealingConstants {
  phase: number;
  growth: number;
  temperature: number;
}

export const ONE_MACHINE: AnnealingConstants = { phase: 300, growth: 1.1, temperature: 0.008 };
/** Without changeovers local optima are shallow: half the temperature leaves them, and the time is better spent descending. */
export const ONE_MACHINE_WITHOUT_CHANGEOVERS: AnnealingConstants = { phase: 400, growth: 1.3, temperature: 0.004 };
export const SEVERAL_MACHINES: AnnealingConstants = { phase: 500, growth: 1, temperature: 0.01 };

/** Accepts worse solutions with a probability that falls over a phase. */
export class AnnealingSchedule {
  /** Phases that have ended. */
  phases = 0;
  private iteration = 0;
  private phase: number;
  private stale = 0;
  private least = Infinity;

  constructor(private readonly constants: AnnealingConstants) {
    this.phase = constants.phase;
  }

  accepts(change: number, cost: number, random: Random): boolean {
    this.iteration++;
    if (change <= 0) return true;
    const temperature = this.constants.temperature * cost * (1 - this.iteration / this.phase) ** 2;
    return change < -temperature * Math.log(random.unit() + 1e-12);
  }

  /** @returns how many phases in a row have found nothing below the best value of the phases before them */
  staleAfter(value: number): number {
    this.stale = value < this.least ? 0 : this.stale + 1;
    this.least = Math.min(this.least, value);
    return this.stale;
  }

  /** Whether the phase has ended; then the next one begins. */
  endsPhase(): boolean {
    if (this.iteration < this.phase) return false;
    this.phases++;
    this.iteration = 0;
    this.phase = Math.floor(this.phase * this.constants.growth);
    return true;
  }
}
