import { costOf } from '../../cost.js';
import type { BookedVisit, Booking, Plan, Stint, Unplaced } from '../../plan.js';
import type { Job, Problem } from '../../problem.js';
import { Builder } from './builder.js';
import type { Recorder } from './builder.js';
import { NOT_IN_HORIZON } from './model-of.js';
import type { Compiled } from './model-of.js';
import type { Order } from './order.js';

type Draft = { -readonly [Key in keyof Booking]: Booking[Key] } & { items: Record<string, string>; stints: Stint[] };

/** Builds the schedule of an order and writes it down as a plan. */
export function planOf(problem: Problem, compiled: Compiled, { order, candidate, isExact = false }: Order): Plan {
  const writer = new Writer(problem, compiled);
  const builder = new Builder(compiled.model);
  builder.recorder = writer;
  builder.isExact = isExact;
  for (const task of order) builder.place(task, candidate);
  const bookings = [...runningBookings(problem), ...writer.bookings.values()].sort((a, b) => a.startMin - b.startMin);
  const unplaced = [...leftOut(problem, compiled.jobs), ...writer.unplacedTasks];
  const ids = [...compiled.jobs, ...problem.visits].map(({ id }) => id);
  return {
    ...{ bookings, unplaced, visits: writer.visits, order: writer.placed.map((task) => ids[task]!) },
    cost: costOf(problem, bookings, writer.visits, unplaced),
  };
}

class Writer implements Recorder {
  readonly bookings = new Map<number, Draft>();
  readonly visits: BookedVisit[] = [];
  readonly unplacedTasks: Unplaced[] = [];
  /** The tasks in the order in which they were really placed: a job brings visits, preceding and pinned jobs forward. */
  readonly placed: number[] = [];

  constructor(
    private readonly problem: Problem,
    private readonly compiled: Compiled,
  ) {}

  job(job: number, candidate: number, setupStartMin: number, setupMin: number, startMin: number, endMin: number): void {
    const { model } = this.compiled;
    this.placed.push(job);
    Object.assign(this.draft(job), {
      frameId: this.problem.frames[model.candidateFrame[candidate]!]!.id,
      candidate: model.candidateIndex[candidate]!,
      setupStartMin,
      setupMin,
      startMin,
      endMin,
    });
  }

  unit(job: number, link: number, unit: number): void {
    this.draft(job).items[this.compiled.links[link]!] = this.problem.items[unit]!.id;
  }

  stint(job: number, isSetup: boolean, startMin: number, endMin: number, technician: number): void {
    const technicianId = this.problem.technicians?.[technician]?.id ?? null;
    this.draft(job).stints.push({ kind: isSetup ? 'setup' : 'work', startMin, endMin, technicianId });
  }

  visit(visit: number, startMin: number, endMin: number): void {
    const { id, itemId } = this.problem.visits[visit]!;
    this.placed.push(this.compiled.model.jobs + visit);
    this.visits.push({ visitId: id, itemId, startMin, endMin });
  }

  unplaced(task: number, waits: boolean): void {
    const { model, jobs } = this.compiled;
    this.placed.push(task);
    const isWaiting = waits || model.release[task] === NOT_IN_HORIZON;
    if (task < model.jobs)
      this.unplacedTasks.push({
        id: jobs[task]!.id,
        kind: 'job',
        reason: isWaiting ? 'waits-for-unplaced' : 'no-room-in-horizon',
      });
    else
      this.unplacedTasks.push({
        id: this.problem.visits[task - model.jobs]!.id,
        kind: 'visit',
        reason: 'no-room-in-horizon',
      });
  }

  private draft(job: number): Draft {
    const known = this.bookings.get(job);
    if (known) return known;
    const jobId = this.compiled.jobs[job]!.id;
    const fresh: Draft = {
      jobId,
      frameId: '',
      candidate: -1,
      items: {},
      setupStartMin: 0,
      setupMin: 0,
      startMin: 0,
      endMin: 0,
      stints: [],
    };
    this.bookings.set(job, fresh);
    return fresh;
  }
}

function runningBookings({ jobs }: Problem): Booking[] {
  return jobs.flatMap((job) => {
    if (!job.running) return [];
    const { frameId, items, startMin, endMin } = job.running;
    const candidate = job.candidates.findIndex(
      (one) => one.frameId === frameId && one.links.every(({ link, pool }) => pool.includes(items[link] ?? '')),
    );
    const stints: Stint[] = [{ kind: 'work', startMin, endMin, technicianId: null }];
    return [
      { jobId: job.id, frameId, candidate, items, setupStartMin: startMin, setupMin: 0, startMin, endMin, stints },
    ];
  });
}

function leftOut(problem: Problem, planned: readonly Job[]): Unplaced[] {
  const inModel = new Set(planned);
  return problem.jobs
    .filter((job) => !job.running && !inModel.has(job))
    .map((job) => ({ id: job.id, kind: 'job', reason: job.hold ? 'held' : 'no-candidate' }));
}
