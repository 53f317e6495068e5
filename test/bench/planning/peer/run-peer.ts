import highs from 'highs';
import type { Problem } from '#libs/planning/src/index.js';
import { mipOf } from './mip-of.js';

// The package's types describe its CommonJS form; what is imported here is its loader itself.
const load = highs as unknown as typeof highs.default;

/** What the general-purpose solver (HiGHS, branch and cut, one thread) made of the same problem in the same time. */
export interface PeerRun {
  /** Null without an answer in time. */
  value: number | null;
  isOptimal: boolean;
  note: string;
  elapsedMs: number;
}

/** Runs the solver; a model that is too large for it is said to be so. */
export async function runPeer(problem: Problem, seconds: number): Promise<PeerRun> {
  const beganMs = performance.now();
  const mip = mipOf(problem);
  if (!mip) return { value: null, isOptimal: false, note: 'model too large', elapsedMs: 0 };
  const solver = await load();
  try {
    const answer = solver.solve(mip.text, { time_limit: seconds, output_flag: false });
    const found =
      Number.isFinite(answer.ObjectiveValue) && Object.keys(answer.Columns).length > 0 && isAnswer(answer.Columns);
    const elapsedMs = performance.now() - beganMs;
    return {
      value: found ? Math.round(answer.ObjectiveValue) : null,
      isOptimal: answer.Status === 'Optimal',
      note: answer.Status,
      elapsedMs,
    };
  } catch (error) {
    return {
      value: null,
      isOptimal: false,
      note: error instanceof Error ? error.message : String(error),
      elapsedMs: performance.now() - beganMs,
    };
  }
}

/** Without a solution the columns come back without values. */
const isAnswer = (columns: object): boolean =>
  Object.values(columns).some((column) => typeof (column as { Primal?: unknown }).Primal === 'number');
