import type { LineProblem, ProblemReason } from './curve-reading.js';

const SHOWN_CHARACTERS = 60;

/** Counts every problem of a file and keeps the first few. */
export class ProblemList {
  readonly named: LineProblem[] = [];
  count = 0;

  constructor(private readonly mostNamed: number) {}

  /** @param line, column counted from 1, null where the whole file is meant */
  add(reason: ProblemReason, line: number | null, column: number | null, found: string): void {
    this.count++;
    if (this.named.length >= this.mostNamed) return;
    this.named.push({ line, column, reason, found: found.trim().slice(0, SHOWN_CHARACTERS) });
  }
}
