import fc from 'fast-check';
import { Random } from '../random.js';
import { applyExchange, applySwap } from './apply.js';
import { Lanes } from './lanes.js';
import type { LaneModel } from './model.js';
import { priceReplace, priceSwap } from './price.js';

/** Random sequences: a few lanes with setups, and releases where asked for. */
function randomModel(random: Random, jobs: number, lanes: number, releases: boolean): LaneModel {
  const size = jobs + 1;
  const figures = (count: number, below: number, last = 0): Int32Array =>
    Int32Array.from({ length: count + 1 }, (_, at) => (at < count ? random.below(below) : last));
  const matrix = Int32Array.from({ length: size * size }, (_, at) => (at % size === jobs ? 0 : random.below(30)));
  const work = Int32Array.from({ length: lanes * size }, (_, at) => (at % size === jobs ? 0 : 1 + random.below(50)));
  return {
    lanes,
    jobs,
    work,
    families: size,
    familyOf: Int32Array.from({ length: size }, (_, at) => at),
    setupAt: new Int32Array(lanes),
    setup: matrix,
    release: releases ? figures(jobs, 200, -1_000_000) : new Int32Array(size).fill(-1_000_000),
    hasReleases: releases,
    due: figures(jobs, 300),
    lateRate: Float64Array.from({ length: size }, (_, at) => (at < jobs ? random.below(10) : 0)),
    endRate: random.below(2) / 10,
    setupRate: random.below(2) / 5,
    makespan: false,
    scaleMin: 100,
  };
}

function filled(random: Random, jobs: number, lanes: number, releases: boolean): Lanes {
  const s = new Lanes(randomModel(random, jobs, lanes, releases));
  const split = 1 + random.below(jobs - 1);
  const all = Array.from({ length: jobs }, (_, job) => job);
  if (lanes === 1) s.setLane(0, all);
  else [all.slice(0, split), all.slice(split)].forEach((some, lane) => s.setLane(lane, some));
  return s;
}

const cases = fc.record({
  seed: fc.integer({ min: 1, max: 1e9 }),
  jobs: fc.integer({ min: 4, max: 14 }),
  releases: fc.boolean(),
});

describe('the price of a move', () => {
  it('is what the cost changes by when two blocks of a lane change places', () => {
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

  it('is what the cost changes by when blocks of two lanes change places', () => {
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
