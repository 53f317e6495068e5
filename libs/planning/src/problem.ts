/**
 * What has to be planned, as plain data. All times are whole minutes from the start of the horizon (minute 0);
 * all windows are half-open, sorted, and do not touch or overlap.
 */
export interface Problem {
  /** Length of the horizon, min. Nothing is planned to end after it. */
  horizonMin: number;
  frames: readonly Frame[];
  /** Every unit that a pool of some candidate names. Frames are not items here. */
  items: readonly Item[];
  /** The roster; null when the roster is not to be planned (then nobody is booked). */
  technicians: readonly Technician[] | null;
  jobs: readonly Job[];
  /** Calibration visits that have to be placed. */
  visits: readonly Visit[];
  changeover: Changeover;
  objective: Objective;
  /** The plan in force, from which moves are counted and which holds inside the freeze window; null when there is none. */
  published: PublishedPlan | null;
  /** Bookings of the published plan whose setup starts before this minute are kept while they stay possible, min. */
  freezeUntilMin: number;
  /**
   * A job that needs somebody throughout begins where at least so long a stint follows its setup at once, or all of its work,
   * min. Where there is no such place in the horizon, and when it is absent, any stint will do.
   */
  leastStintMin?: number;
}

/** [startMin, endMin), whole minutes. */
export interface Window {
  startMin: number;
  endMin: number;
}

export interface Frame {
  id: string;
  /** When people work on it: its shift calendar; null means at any minute. */
  open: readonly Window[] | null;
  /** When nothing may be on it, not even a run that needs nobody: service, repair, out of the lab. May overlap `open`; absent means never. */
  down?: readonly Window[];
  /** First minutes of every open window that go to warm-up (and the check of a new shift), when the frame stood closed for `warmUpAfterMin` or longer. */
  warmUpMin: number;
  /** How long the frame must have been closed for a warm-up to be due, min. */
  warmUpAfterMin: number;
  /** What is fitted at minute 0. */
  rig: Rig;
}

export interface Rig {
  /** Units fitted, by link, e.g. `{ cell: 'C-07', 'upper grip': 'G-31' }`. */
  items: Readonly<Record<string, string>>;
  /** Setup family of what ran last; null when a changeover from it costs nothing. Used with `Changeover.families` only. */
  family: string | null;
  /** Chamber temperature, °C; null when no chamber is fitted. */
  temperatureC: number | null;
}

export interface Item {
  id: string;
  /** When it may be used: calibration in force, in service, not lent; null means at any minute. */
  usable: readonly Window[] | null;
}

export interface Technician {
  id: string;
  /** On shift, min. */
  shifts: readonly Window[];
  /** Names of what this person may run, e.g. method ids. */
  authorisations: readonly string[];
}

export interface Job {
  id: string;
  /** Work may not start before it: accepted, specimens here and conditioned, min. The setup may. */
  releaseMin: number;
  /** Due instant, min; may be negative (already late). */
  dueMin: number;
  /** Cost of one minute late, relative to other jobs; 0 or more. */
  weight: number;
  /** Jobs that must have ended before this one's work starts. */
  after: readonly string[];
  /** Load trains that can run it. A frame may appear more than once, with other pools. */
  candidates: readonly Candidate[];
  /** `throughout`: setup and every specimen need a technician; `setup`: only the setup does, and the run goes on over closed hours. */
  attended: 'throughout' | 'setup';
  /** What a technician must be authorised for; null when anybody may run it. */
  authorisation: string | null;
  /** Not to be planned for now. */
  hold: boolean;
  /** Where the manager wants it; null when the planner is free. */
  pin: Pin | null;
  /** It is on a frame already; then pin and hold are ignored. */
  running: RunningJob | null;
}

export interface Candidate {
  frameId: string;
  /** Working time per specimen, min. Work may stop only between specimens. */
  perSpecimenMin: number;
  specimens: number;
  /** One pool of interchangeable units for each link of the train; exactly one unit of each is used. */
  links: readonly LinkNeed[];
  /** Setup family, for `Changeover.families`. */
  family: string | null;
  /** Chamber temperature during the run, °C; null when no chamber is needed. */
  temperatureC: number | null;
}

export interface LinkNeed {
  /** E.g. `cell`, `upper grip`, `extensometer`. */
  link: string;
  pool: readonly string[];
}

export interface Pin {
  frameId: string;
  /** Minute at which the work starts; null pins the frame only. */
  startMin: number | null;
}

export interface RunningJob {
  frameId: string;
  /** Units in use, by link. */
  items: Readonly<Record<string, string>>;
  /** When the work began; zero or negative, min. */
  startMin: number;
  /** When it is expected to be done, min. */
  endMin: number;
}

export interface Visit {
  id: string;
  itemId: string;
  /** How long the item is away, closed hours included, min. */
  durationMin: number;
  earliestMin: number;
  /** The item must be back by then; null when it is overdue already: then as soon as it can be. */
  beforeMin: number | null;
  /** Until when the item may be used after the visit, min. */
  inForceUntilMin: number;
}

export interface Changeover {
  /** Minutes to fit another unit, by link; a link that is not named costs nothing. */
  byLinkMin: Readonly<Record<string, number>>;
  /** Links whose unit needs a shift check after it was fitted (load cells). */
  checkedLinks: readonly string[];
  /** One such check, min. */
  checkMin: number;
  /** Chamber ramp, °C per min; must be positive when any candidate has a temperature. */
  rampCPerMin: number;
  /** Soak after the chamber has reached another temperature, min. */
  soakMin: number;
  /** Minutes from one setup family to the next, by frame; null when links say it all. Added to the rest. */
  families: FamilyChangeover | null;
}

export interface FamilyChangeover {
  families: readonly string[];
  /** By frame id: `[from][to]`, min, in the order of `families`. Frames may share one matrix. */
  byFrame: Readonly<Record<string, readonly (readonly number[])[]>>;
}

export type Objective = LabObjective | MakespanObjective;

/** Σ of the parts below; a part with rate 0 is switched off. Rates are cost per minute unless said otherwise. */
export interface LabObjective {
  kind: 'lab';
  /** × job weight × minutes past due. */
  perLateMin: number;
  /** × minutes of changeover. */
  perChangeoverMin: number;
  /** × nearness × minutes between published and planned start. */
  perMovedMin: number;
  /**
   * × nearness × jobs that go to another frame than published, or begin more than `MOVED_AFTER_MIN` off their published start. It is
   * also the least gain for which the published plan is given up.
   */
  perMovedFrame: number;
  /** × end of each job: early finish. */
  perEndMin: number;
  /** × square of each frame's booked hours: even load. */
  perLoadHourSquared: number;
}

/** Cost is the end of the last job, min. */
export interface MakespanObjective {
  kind: 'makespan';
}

export interface PublishedPlan {
  bookings: readonly PublishedBooking[];
  /** Absent means that none is known. */
  visits?: readonly PublishedVisit[];
  /** As in `Plan`; absent orders jobs and visits by their start. */
  order?: readonly string[];
}

/** What has to be known of a published visit; a `BookedVisit` is one. */
export interface PublishedVisit {
  visitId: string;
  startMin: number;
}

/** What has to be known of a published booking; a `Booking` is one. */
export interface PublishedBooking {
  jobId: string;
  frameId: string;
  setupStartMin: number;
  startMin: number;
  items: Readonly<Record<string, string>>;
  /** Who begins it; goes on to do so where that costs no time. Absent or null means anybody. */
  technicianId?: string | null;
}

/** A start that is this far off the published one, or less, does not count as moved, min. */
export const MOVED_AFTER_MIN = 15;

/** Moving a job that was to start now costs so many times what moving one in the far future costs; the surplus halves every day. */
const NEARNESS_NOW = 8;

/** How much more it costs to move a job because people count on it soon: 8 now, 4.5 in a day, near 1 after a week. */
export function nearness(publishedStartMin: number): number {
  return 1 + (NEARNESS_NOW - 1) * 2 ** (-Math.max(0, publishedStartMin) / 1440);
}

/** Lateness first, then changeover, then calm, then early and even: the order of the lab's settings as delivered. */
export const DEFAULT_OBJECTIVE: LabObjective = {
  kind: 'lab',
  perLateMin: 1,
  perChangeoverMin: 0.2,
  perMovedMin: 0.01,
  perMovedFrame: 30,
  perEndMin: 0.001,
  perLoadHourSquared: 0.001,
};
