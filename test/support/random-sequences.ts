import type { SequenceModel } from '#libs/planning/src/engine/sequences/model.js';
import type { Random } from '#libs/planning/src/engine/random.js';

interface RandomSequences {
  jobs: number;
  machines: number;
  releases?: boolean;
  changeovers?: boolean;
}

/** Random sequences: a few machines, with a changeover between any two jobs unless told otherwise, and releases where asked for. */
export function randomModel(
  random: Random,
  { jobs, machines, releases = false, changeovers = true }: RandomSequences,
): SequenceModel {
  const size = jobs + 1;
  const families = changeovers ? size : 1;
  const figures = (count: number, below: number, last = 0): Int32Array =>
    Int32Array.from({ length: count + 1 }, (_, at) => (at < count ? random.below(below) : last));
  const matrix = Int32Array.from({ length: families * families }, (_, at) =>
    at % families === families - 1 ? 0 : random.below(30),
  );
  const work = Int32Array.from({ length: machines * size }, (_, at) => (at % size === jobs ? 0 : 1 + random.below(50)));
  return {
    machines,
    jobs,
    work,
    families,
    familyOf: Int32Array.from({ length: size }, (_, at) => Math.min(at, families - 1)),
    setupAt: new Int32Array(machines),
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
