import type { AtFrame } from '#libs/bench/src/index.js';
import { lacksOf } from '../specimens/missing.js';
import type { BenchFacts } from './bench-facts.js';

/** The facts as the interlocks look at them. */
export function atFrameOf(facts: BenchFacts, byId: string): AtFrame {
  const { job, work, frame, frameId, busy, fit, settings } = facts;
  return {
    job,
    byId,
    method: { id: work.method.id, designation: work.method.designation },
    authorised: facts.authorised,
    frame,
    train: facts.train,
    trainItems: facts.trainItems,
    rig: facts.rig,
    problems: fit.problems,
    frameHolder: (frameId === null ? undefined : busy.get(frameId)) ?? null,
    shiftCheckReason: facts.shiftCheckReason,
    shiftCheckValidMin: settings.shiftCheckValidMin,
    checksAsked: facts.checksAsked,
    specimens: facts.specimens,
    notTestedWhy: null,
    lacks: lacksOf(facts),
  };
}
