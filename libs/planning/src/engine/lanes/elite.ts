import type { Random } from '../random.js';
import type { LaneResult } from './search.js';

/** How many plans are kept: more, and what two have in common means less. */
const MOST = 4;

/** The best plans of the phases so far, each with another value. */
export class Elite {
  private readonly plans: LaneResult[] = [];

  add(plan: LaneResult): void {
    if (this.plans.some(({ value }) => value === plan.value)) return;
    this.plans.push(plan);
    this.plans.sort((a, b) => a.value - b.value);
    this.plans.length = Math.min(this.plans.length, MOST);
  }

  /** @returns two different plans, or null while there are no two */
  pair(random: Random): [LaneResult, LaneResult] | null {
    const count = this.plans.length;
    if (count < 2) return null;
    const one = random.below(count);
    return [this.plans[one]!, this.plans[(one + 1 + random.below(count - 1)) % count]!];
  }
}
