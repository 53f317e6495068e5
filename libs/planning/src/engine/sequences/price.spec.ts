import fc from 'fast-check';
import { randomModel } from '#test/support/random-sequences.js';
import { Random } from '../random.js';
import { applyExchange, applySwap } from './apply.js';
import { MachineSequences } from './machine-sequences.js';
import { priceReplace, priceSwap } from './price.js';

function filled(random: Random, jobs: number, machines: number, releases: boolean): MachineSequences {
  const s = new MachineSequences(randomModel(random, { jobs, machines, releases }));
  const split = 1 + random.below(jobs - 1);
  const all = Array.from({ length: jobs }, (_, job) => job);
  if (machines === 1) s.setSequence(0, all);
  else [all.slice(0, split), all.slice(split)].forEach((some, machine) => s.setSequence(machine, some));
  return s;
}

const cases = fc.record({
  seed: fc.integer({ min: 1, max: 1e9 }),
  jobs: fc.integer({ min: 4, max: 14 }),
  releases: fc.boolean(),
});

describe('the price of a move', () => {
  it('is what the cost changes by when two blocks of a machine change places', () => {
    fc.assert(
      fc.property(cases, ({ seed, jobs, releases }) => {
        const random = new Random(seed);
        const s = filled(random, jobs, 1, releases);
        const i = 1 + random.below(jobs - 1);
        const j = i + random.below(jobs - i);
        const g = j + 1 + random.below(jobs - j);
        const h = g + random.below(jobs - g + 1);
        const before = s.cost;
        const price = priceSwap(s, 0, i, j, g, h, Infinity);
        applySwap(s, 0, i, j, g, h);
        expect(s.cost - before).toBeCloseTo(price, 6);
      }),
      { numRuns: 2000 },
    );
  });

  it('is refused only where it is not below the limit', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: -500, max: 500, noNaN: true }), ({ seed, jobs, releases }, limit) => {
        const random = new Random(seed);
        const s = filled(random, jobs, 1, releases);
        const i = 1 + random.below(jobs - 1);
        const exact = priceSwap(s, 0, i, i, i + 1, jobs, Infinity);
        const limited = priceSwap(s, 0, i, i, i + 1, jobs, limit);
        expect(limited === Infinity ? exact >= limit - 1e-6 : limited === exact).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('is what the cost changes by when blocks of two machines change places', () => {
    fc.assert(
      fc.property(cases, ({ seed, jobs, releases }) => {
        const random = new Random(seed);
        const s = filled(random, jobs, 2, releases);
        const [first, second] = [s.length[0]!, s.length[1]!];
        const i = 1 + random.below(first);
        const j = i - 1 + random.below(first - i + 2);
        const g = 1 + random.below(second);
        const h = g - 1 + random.below(second - g + 2);
        const before = s.cost;
        const price = priceReplace(s, 0, i, j, 1, g, h, Infinity) + priceReplace(s, 1, g, h, 0, i, j, Infinity);
        applyExchange(s, 0, i, j, 1, g, h);
        expect(s.cost - before).toBeCloseTo(price, 6);
      }),
      { numRuns: 2000 },
    );
  });
});
