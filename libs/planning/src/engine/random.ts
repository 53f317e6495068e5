/** A small seeded generator (xorshift, Marsaglia 2003, 32 bit, shifts 13-17-5). The same seed gives the same numbers. */
export class Random {
  private state: number;

  /** @param seed any whole number */
  constructor(seed: number) {
    // Spread small seeds over the state and keep clear of the one fixed point, zero.
    this.state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) | 1;
    for (let i = 0; i < 8; i++) this.next();
  }

  /** @returns a whole number in [0, 2³²) */
  next(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return x >>> 0;
  }

  /** @returns a whole number in [0, bound); bound at most 2³¹ */
  below(bound: number): number {
    return ((this.next() / 4294967296) * bound) | 0;
  }

  /** @returns a number in [0, 1) */
  unit(): number {
    return this.next() / 4294967296;
  }
}
