/** How long the search may go on. Core code has no clock of its own: `now` is handed in. */
export interface Limits {
  /** Wall time, ms; needs `now`. */
  timeMs?: number;
  /** Improvement rounds; with it the plan depends on problem and seed alone. */
  iterations?: number;
  /** Milliseconds on any monotonic clock. */
  now?: () => number;
  /** Asked between rounds; true ends the search with the best plan so far. */
  shouldStop?: () => boolean;
}

/** Counts rounds and says when to stop. */
export class Budget {
  rounds = 0;
  evaluations = 0;
  private readonly startMs: number;

  constructor(private readonly limits: Limits) {
    if (limits.timeMs === undefined && limits.iterations === undefined)
      throw new Error('a search needs timeMs or iterations');
    if (limits.timeMs !== undefined && !limits.now) throw new Error('timeMs needs now');
    this.startMs = limits.now?.() ?? 0;
  }

  elapsedMs(): number {
    return (this.limits.now?.() ?? 0) - this.startMs;
  }

  /** How much of the wall time is gone, 0 to 1; 0 where only rounds are limited. */
  spentShare(): number {
    return this.limits.timeMs === undefined ? 0 : this.elapsedMs() / this.limits.timeMs;
  }

  /** Called once a round. */
  isSpent(): boolean {
    const { iterations, timeMs, shouldStop } = this.limits;
    if (iterations !== undefined && this.rounds >= iterations) return true;
    if (timeMs !== undefined && this.elapsedMs() >= timeMs) return true;
    return shouldStop?.() ?? false;
  }
}
