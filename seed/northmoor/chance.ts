import { createHash } from 'node:crypto';

/** Numbers between 0 and 1 that look random and are the same for the same name. */
export class Chance {
  private drawn = 0;

  constructor(private readonly name: string) {}

  /** Uniform in [0, 1): the first 48 bits of a hash of the name and a counter. */
  next(): number {
    this.drawn += 1;
    return createHash('sha256').update(`${this.name}/${this.drawn}`).digest().readUIntBE(0, 6) / 2 ** 48;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** Normal with mean 0 and standard deviation 1 (Box and Muller, 1958). */
  normal(): number {
    return Math.sqrt(-2 * Math.log(1 - this.next())) * Math.cos(2 * Math.PI * this.next());
  }
}
