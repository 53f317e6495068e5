import type { Job, Problem } from '#libs/planning/src/index.js';
import { Random } from '#libs/planning/src/engine/random.js';
import { dispatchPlan } from '#test/support/dispatch-plan.js';
import { makeLab } from '#test/bench/planning/lab/make-lab.js';

/** A small made-up lab with everything that a problem can have: pins, holds, running jobs, precedence, a published plan and a freeze window. */
export function randomLab(seed: number, frames: number, jobs: number, roster: boolean): Problem {
  const plain = makeLab({ frames, jobs, roster, seed });
  const random = new Random(seed + 17);
  const published = dispatchPlan(plain, 'earliest due');
  const running = plain.jobs[0]!;
  return {
    ...plain,
    jobs: plain.jobs.map((job, at) =>
      job === running ? asRunning(job, random) : altered(job, at, plain.jobs, random),
    ),
    published: random.below(2) === 0 ? published : null,
    freezeUntilMin: random.below(3) * 240,
    leastStintMin: random.below(3) * 30,
  };
}

function asRunning(job: Job, random: Random): Job {
  const { frameId, links } = job.candidates[0]!;
  const items = Object.fromEntries(links.map(({ link, pool }) => [link, pool[0]!]));
  return { ...job, running: { frameId, items, startMin: -random.below(200), endMin: random.below(600) } };
}

function altered(job: Job, at: number, all: readonly Job[], random: Random): Job {
  const kind = random.below(10);
  const { frameId } = job.candidates[random.below(job.candidates.length)]!;
  if (kind === 0) return { ...job, hold: true };
  if (kind === 1) return { ...job, pin: { frameId, startMin: null } };
  if (kind === 2) return { ...job, pin: { frameId, startMin: 420 + 1440 * random.below(5) + random.below(300) } };
  if (kind === 3 && at > 2) return { ...job, after: [all[1 + random.below(at - 1)]!.id] };
  if (kind === 4) return { ...job, candidates: [] };
  return job;
}
