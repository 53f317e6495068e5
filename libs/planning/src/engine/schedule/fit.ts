import { Hours } from './hours.js';
import type { ScheduleModel } from './model.js';
import { NEVER } from './roster.js';
import type { State } from './state.js';
import { Train } from './train.js';

/** After so many tries a job counts as finding no room. */
const MOST_TRIES = 400;

/** Is called with each stretch of setup or work, and who does it (−1 for nobody). */
export type OnStint = (isSetup: boolean, start: number, end: number, technician: number) => void;

/** Computes where a job goes on a candidate in the partial schedule: units, setup, start and end. */
export class Fit {
  setupStart = 0;
  setupMin = 0;
  start = 0;
  end = 0;
  /** Whether the first units that were tried would do. */
  isPlain = false;
  readonly train: Train;
  /** The published place of the job, before which it shall not lie; 0 where it may go anywhere. */
  private setupFloor = 0;
  private startFloor = 0;
  /** Length of the stint that has to follow the setup at once, min. */
  private firstStintMin = 0;
  /** Stints of the specimens that were placed last, by three: start, end, technician. */
  private readonly stints: number[] = [];
  /** Who does the setup. */
  private setupBy = -1;
  private readonly hours: Hours;
  private readonly model: ScheduleModel;

  constructor(private readonly state: State) {
    this.model = state.model;
    this.train = new Train(state);
    this.hours = new Hours(state.model, state.roster);
  }

  /**
   * Computes units and times of a job on a candidate.
   *
   * @param asPublished whether it shall not lie earlier than in the published plan
   * @returns false when it finds no room in the horizon
   */
  find(job: number, candidate: number, asPublished = false): boolean {
    const { model, train } = this;
    const frame = model.candidateFrame[candidate]!;
    this.setupFloor = asPublished ? model.publishedSetup[job]! : 0;
    this.startFloor = asPublished ? model.publishedStart[job]! : 0;
    let from = Math.max(this.state.frameFree[frame]!, this.setupFloor);
    train.begin();
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      if (!train.choose(job, candidate, frame, from)) return false;
      const later = this.tryFrom(job, candidate, frame, Math.max(from, train.freeMin(candidate)));
      this.isPlain = tries === 0 && !asPublished;
      if (later < 0) return this.end <= model.horizonMin;
      if (later >= model.horizonMin) return false;
      from = later;
    }
    return false;
  }

  /** Books the technicians for the setup and work that were found last, and reports each stint. */
  book(job: number, onStint: OnStint | null): void {
    const { model, stints } = this;
    if (model.technicians === 0 && !onStint) return;
    if (this.setupMin > 0) this.take(true, this.setupStart, this.setupStart + this.setupMin, this.setupBy, onStint);
    if (!model.throughout[job]) return this.take(false, this.start, this.end, -1, onStint);
    for (let x = 0; x < stints.length; x += 3) this.take(false, stints[x]!, stints[x + 1]!, stints[x + 2]!, onStint);
  }

  private take(isSetup: boolean, start: number, end: number, technician: number, onStint: OnStint | null): void {
    if (technician >= 0 && end > start) this.state.roster.take(technician, start, end);
    onStint?.(isSetup, start, end, technician);
  }

  /** Earliest setup, work and end from a minute on. @returns −1 when they stand, else the minute from which to try again */
  private tryFrom(job: number, candidate: number, frame: number, from: number): number {
    const ready = Math.max(this.readyMin(job), this.startFloor);
    const setup = this.train.changeoverMin(candidate, frame);
    this.setupMin = setup;
    // The setup ends when the work can begin, so that nothing is held longer than it has to be.
    const at = this.beginFrom(job, candidate, frame, Math.max(from, ready - setup));
    this.setupBy = this.hours.by;
    if (at >= NEVER || !this.work(job, candidate, frame, Math.max(at + setup, ready))) return NEVER;
    this.setupStart = setup === 0 ? this.start : at;
    const open = this.hours.afterDown(frame, this.setupStart, this.end);
    return open >= 0 ? open : this.train.tryAgainFrom(candidate, this.setupStart, this.end);
  }

  /** First minute for the setup, with a stint right behind it that is worth it, where there is room for one. */
  private beginFrom(job: number, candidate: number, frame: number, from: number): number {
    const { hours, setupMin } = this;
    hours.by = this.model.publishedTechnician[job]!;
    this.firstStintMin = this.leastStintMin(job, candidate);
    if (this.firstStintMin > 0) {
      const at = hours.earliest(job, frame, from, setupMin + this.firstStintMin);
      if (at < NEVER) return at;
      this.firstStintMin = 0;
      hours.by = this.model.publishedTechnician[job]!;
    }
    return setupMin > 0 ? hours.earliest(job, frame, from, setupMin) : from;
  }

  /** Whole specimens for at least so long as the problem asks, or all of them, min. */
  private leastStintMin(job: number, candidate: number): number {
    const { leastStintMin, throughout, perSpecimen, specimens } = this.model;
    const per = perSpecimen[candidate]!;
    if (leastStintMin === 0 || !throughout[job] || per === 0) return 0;
    return per * Math.min(specimens[candidate]!, Math.ceil(leastStintMin / per));
  }

  /** From when on release, preceding jobs and pin allow the work, min. */
  private readyMin(job: number): number {
    const { release, after, afterAt, pinStart } = this.model;
    let ready = Math.max(release[job]!, pinStart[job]!);
    for (let x = afterAt[job]!; x < afterAt[job + 1]!; x++) ready = Math.max(ready, this.state.endOf[after[x]!]!);
    return ready;
  }

  private work(job: number, candidate: number, frame: number, from: number): boolean {
    const { model } = this;
    const length = model.perSpecimen[candidate]! * model.specimens[candidate]!;
    this.stints.length = 0;
    if (model.throughout[job] && (model.technicians > 0 || !model.frameAlways[frame])) {
      return this.specimens(job, candidate, from);
    }
    this.start = model.throughout[job] ? from : this.hours.earliestAlone(frame, from, length);
    this.end = this.start + length;
    this.stints.push(this.start, this.end, -1);
    return this.start < NEVER;
  }

  /** Places specimens that need somebody, each in one piece. */
  private specimens(job: number, candidate: number, from: number): boolean {
    const { model, hours } = this;
    const frame = model.candidateFrame[candidate]!;
    const per = model.perSpecimen[candidate]!;
    let left = model.specimens[candidate]!;
    let at = from;
    let first = -1;
    while (left > 0) {
      const start = hours.earliest(job, frame, at, per);
      if (start >= NEVER) return false;
      if (first < 0) first = start;
      const count = per === 0 ? left : Math.min(left, Math.floor((hours.goesOnUntil(frame, start) - start) / per));
      at = start + count * per;
      left -= count;
      this.stints.push(start, at, hours.by);
    }
    this.start = first;
    this.end = at;
    return true;
  }
}
