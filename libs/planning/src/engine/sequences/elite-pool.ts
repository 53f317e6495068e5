import type { Random } from '../random.js';
import type { SequenceSolution } from './model.js';

/** More solutions would have less in common. */
const CAPACITY = 4;

/** The best solutions of the phases so far, each with another value. */
export class ElitePool {
  private readonly solutions: SequenceSolution[] = [];

  add(solution: SequenceSolution): void {
    if (this.solutions.some(({ value }) => value === solution.value)) return;
    this.solutions.push(solution);
    this.solutions.sort((a, b) => a.value - b.value);
    this.solutions.length = Math.min(this.solutions.length, CAPACITY);
  }

  /** @returns two different solutions; null while there are no two */
  pair(random: Random): [SequenceSolution, SequenceSolution] | null {
    const count = this.solutions.length;
    if (count < 2) return null;
    const one = random.below(count);
    return [this.solutions[one]!, this.solutions[(one + 1 + random.below(count - 1)) % count]!];
  }
}
