/** Looked up once: among the globals of a test runner that takes long, and chance is asked millions of times. */
const { floor, imul } = Math;

/** A small seeded generator of chance (mulberry32), so that every lab can be made again from its number. */
export class Chance {
  constructor(private state: number) {}

  /** Uniform in [0, 1). */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let mixed = imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed = (mixed + imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** Whole number in [from, to]. */
  whole(from: number, to: number): number {
    return from + floor(this.next() * (to - from + 1));
  }

  one<T>(list: readonly T[]): T {
    return list[floor(this.next() * list.length)]!;
  }

  some<T>(list: readonly T[]): T[] {
    return list.filter(() => this.next() < 0.5);
  }

  /** True so often in a hundred. */
  often(percent: number): boolean {
    return this.next() * 100 < percent;
  }

  shuffled<T>(list: readonly T[]): T[] {
    return list
      .map((each) => [this.next(), each] as const)
      .sort(([a], [b]) => a - b)
      .map(([, each]) => each);
  }
}
