import fc from 'fast-check';
import { randomModel } from '#test/support/random-sequences.js';
import { Random } from '../random.js';
import { MachineSequences } from './machine-sequences.js';
import { priceSwap } from './price.js';
import { scanLeft, scanRight, scanSwap, scanSwapLeft } from './scan.js';
import type { Found } from './scan.js';

type Move = readonly [i: number, j: number, g: number, h: number];

/** What a scan hands over to be priced, with a gain to beat that stays as it is. */
function handedOver(gain: number, scan: (found: Found) => void): Set<string> {
  const moves = new Set<string>();
  scan((...move) => {
    moves.add(move.join());
    return gain;
  });
  return moves;
}

const cases = fc.record({
  seed: fc.integer({ min: 1, max: 1e9 }),
  jobs: fc.integer({ min: 5, max: 16 }),
  changeovers: fc.boolean(),
  gain: fc.integer({ min: -400, max: 0 }),
});

describe('a row of moves inside a machine', () => {
  it('hands over every move that gains more than what has to be beaten', () => {
    fc.assert(
      fc.property(cases, ({ seed, jobs, changeovers, gain }) => {
        const random = new Random(seed);
        const s = new MachineSequences({ ...randomModel(random, { jobs, machines: 1, changeovers }), setupRate: 0 });
        s.setSequence(
          0,
          Array.from({ length: jobs }, (_, job) => job),
        );
        const i = 1 + random.below(jobs);
        const j = i + random.below(Math.min(4, jobs - i + 1));
        const size = 1 + random.below(3);
        const rows: [scan: (found: Found) => void, moves: Move[]][] = [
          [(found) => scanRight(s, 0, i, j, gain, found), places(j + 1, jobs).map((h): Move => [i, j, j + 1, h])],
          [(found) => scanLeft(s, 0, i, j, gain, found), places(1, i - 1).map((g): Move => [g, i - 1, i, j])],
          [
            (found) => scanSwap(s, 0, i, j, size, j + 2, jobs - size + 1, gain, found),
            places(j + 2, jobs - size + 1).map((g): Move => [i, j, g, g + size - 1]),
          ],
          [
            (found) => scanSwapLeft(s, 0, i, j, size, 1, i - 1 - size, gain, found),
            places(1, i - 1 - size).map((g): Move => [g, g + size - 1, i, j]),
          ],
        ];
        for (const [scan, moves] of rows) {
          if (moves.length === 0) continue;
          const handed = handedOver(gain, scan);
          const gaining = moves.filter((move) => priceSwap(s, 0, ...move, Infinity) < gain - 1e-6);
          expect(gaining.filter((move) => !handed.has(move.join()))).toEqual([]);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

function places(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at);
}
