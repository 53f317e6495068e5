import { Builder } from './builder.js';
import type { ScheduleModel } from './model.js';
import type { Order } from './order.js';
import { shortestWorkMin, visitsFirst } from './order.js';

/** The two look-aheads of the rule, in mean working times and in mean changeovers. */
export interface LookAhead {
  urgency: number;
  setup: number;
}

/** Grid of look-aheads that is tried. */
export const LOOK_AHEADS: readonly LookAhead[] = [4, 1.5, 0.5].flatMap((urgency) =>
  [1, 0.25].map((setup) => ({ urgency, setup })),
);

/** Of the jobs that a frame could take, so many with the nearest due dates are weighed against each other. */
const MOST_WEIGHED = 40;

/**
 * Apparent tardiness cost with setups (Lee, Bhaskaran & Pinedo 1997, IIE Transactions 29): the frame that is free first takes
 * the job with the highest index, which falls with slack and with the changeover and wait that the job would need there.
 */
export function orderByApparentCost(model: ScheduleModel, look: LookAhead): Order {
  const builder = new Builder(model);
  const candidate = Int32Array.from({ length: model.jobs }, (_, job) => model.candidateAt[job]!);
  const order = visitsFirst(model);
  for (const visit of order) builder.place(visit, candidate);
  const queues = queuesOf(model);
  const scale = scalesOf(model);
  const closed = new Uint8Array(model.frames);
  for (let frame = firstFree(builder, closed); frame >= 0; frame = firstFree(builder, closed)) {
    const chosen = highest(builder, queues[frame]!, look, scale);
    if (chosen < 0) {
      closed[frame] = 1;
      continue;
    }
    const job = queues[frame]!.job[chosen]!;
    candidate[job] = queues[frame]!.candidate[chosen]!;
    builder.place(job, candidate);
    order.push(job);
  }
  const left = Array.from({ length: model.jobs }, (_, job) => job).filter((job) => !order.includes(job));
  return { order: Int32Array.from([...order, ...left]), candidate };
}

/** What a frame could take, nearest due date first. */
interface Queue {
  job: number[];
  candidate: number[];
  /** Everything before it is placed. */
  head: number;
}

function queuesOf(model: ScheduleModel): Queue[] {
  const queues: Queue[] = Array.from({ length: model.frames }, () => ({ job: [], candidate: [], head: 0 }));
  const byDue = Array.from({ length: model.jobs }, (_, job) => job).sort((a, b) => model.due[a]! - model.due[b]!);
  for (const job of byDue) {
    for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++) {
      queues[model.candidateFrame[c]!]!.job.push(job);
      queues[model.candidateFrame[c]!]!.candidate.push(c);
    }
  }
  return queues;
}

function scalesOf(model: ScheduleModel): { workMin: number; setupMin: number } {
  let work = 0;
  for (let job = 0; job < model.jobs; job++) work += shortestWorkMin(model, job);
  const links = model.linkMin.reduce((sum, min) => sum + min, 0) / Math.max(1, model.linkMin.length);
  const families =
    model.familyMin.reduce((sum, min) => sum + Math.min(min, 1000), 0) / Math.max(1, model.familyMin.length);
  return { workMin: Math.max(1, work / Math.max(1, model.jobs)), setupMin: Math.max(1, links + families) };
}

function firstFree({ frameFree }: Builder, closed: Uint8Array): number {
  let best = -1;
  for (let frame = 0; frame < closed.length; frame++) {
    if (!closed[frame] && (best < 0 || frameFree[frame]! < frameFree[best]!)) best = frame;
  }
  return best;
}

function highest(builder: Builder, queue: Queue, look: LookAhead, scale: ReturnType<typeof scalesOf>): number {
  const { model } = builder;
  while (queue.head < queue.job.length && builder.done[queue.job[queue.head]!]) queue.head++;
  let best = -1;
  let most = -Infinity;
  for (let x = queue.head, weighed = 0; x < queue.job.length && weighed < MOST_WEIGHED; x++) {
    const job = queue.job[x]!;
    const c = queue.candidate[x]!;
    if (builder.done[job] || !builder.preview(job, c)) continue;
    weighed++;
    const slack = Math.max(0, model.due[job]! - builder.fit.end);
    const wait = builder.fit.start - builder.frameFree[model.candidateFrame[c]!]!;
    const worth = Math.log((model.lateRate[job]! + 1e-6) / Math.max(1, model.perSpecimen[c]! * model.specimens[c]!));
    const index = worth - slack / (look.urgency * scale.workMin) - wait / (look.setup * scale.setupMin);
    if (index > most) {
      most = index;
      best = x;
    }
  }
  return best;
}
