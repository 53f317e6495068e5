import { sequence } from '../support/sequence.js';

/** Choices that follow from a seed. */
export interface Chance {
  /** In [0, 1). */
  next(): number;
  pick<Value>(values: readonly Value[]): Value;
  /** True once in so many times. */
  oneIn(times: number): boolean;
  whole(from: number, to: number): number;
}

export function chanceFrom(seed: number): Chance {
  const next = sequence(seed);
  return {
    next,
    pick: (values) => values[Math.floor(next() * values.length)]!,
    oneIn: (times) => next() < 1 / times,
    whole: (from, to) => from + Math.floor(next() * (to - from + 1)),
  };
}

/** A seed of its own for each name under a seed (FNV-1a, 32 bit: http://www.isthe.com/chongo/tech/comp/fnv/, from memory). */
export function seedFor(seed: number, name: string): number {
  let hash = 0x811c9dc5 ^ seed;
  for (const character of name) hash = Math.imul(hash ^ character.codePointAt(0)!, 0x01000193);
  return (hash >>> 0) % 2_147_483_646;
}
