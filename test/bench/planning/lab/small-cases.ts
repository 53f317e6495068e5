import type { Problem } from '#libs/planning/src/index.js';
import { Random } from '#libs/planning/src/engine/random.js';
import { runPeer } from '../peer/run-peer.js';
import { candidate, emptyProblem, frame, frameId, jobId, plainJob, TARDINESS } from '../read/instance.js';
import { runEngine } from '../run-instance.js';

const FRAMES = 2;
const JOBS = 6;

/** A few jobs on frames that are always open: small enough that an exact solver proves its answer. */
export function smallCase(seed: number, withUnits: boolean): Problem {
  const random = new Random(seed);
  const families = ['tension', 'bending', 'peel'];
  const matrix = families.map((_, from) => families.map((__, to) => (from === to ? 0 : 20 + random.below(60))));
  const frames = Array.from({ length: FRAMES }, (_, at) =>
    frame(frameId(at), withUnits ? null : families[random.below(3)]!),
  );
  const empty = emptyProblem(TARDINESS);
  return {
    ...empty,
    frames,
    items: [{ id: 'C1', usable: null }],
    jobs: Array.from({ length: JOBS }, (_, at) => {
      const links = withUnits && random.below(2) === 0 ? [{ link: 'cell', pool: ['C1'] }] : [];
      const family = withUnits ? null : families[random.below(3)]!;
      const releaseMin = random.below(200);
      return {
        ...plainJob(jobId(at)),
        releaseMin,
        dueMin: releaseMin + 60 + random.below(250),
        weight: 1 + random.below(9),
        candidates: frames.map(({ id }) => ({ ...candidate(id, 40 + random.below(80), family), links })),
      };
    }),
    changeover: {
      ...empty.changeover,
      families: withUnits ? null : { families, byFrame: Object.fromEntries(frames.map(({ id }) => [id, matrix])) },
    },
  };
}

/** The engine beside an exact solver on small cases: what it proves, the engine must reach. */
export async function compareSmallCases(seed: number, peerSeconds: number) {
  const results = [];
  for (let at = 0; at < 8; at++) {
    const problem = smallCase(seed * 100 + at, at % 2 === 1);
    const { value, msToBest } = runEngine(problem, 0.5, seed);
    const peer = await runPeer(problem, peerSeconds);
    results.push({
      units: at % 2 === 1,
      engine: value,
      msToBest,
      exact: peer.value,
      proven: peer.isOptimal,
      exactMs: peer.elapsedMs,
    });
  }
  return results;
}
