import type { JobState, LabSettings } from '#libs/contract/src/index.js';
import type { Ask, Lab, Material, Method, TimeWindow } from '#libs/matching/src/index.js';

/** Everything that a plan is made from, read in one repeatable-read transaction. Instants in UTC ms. */
export interface PlanFacts {
  /** Stamp of the facts; a plan is not published once a fact changed after it. */
  stamp: string;
  nowMs: number;
  settings: LabSettings;
  /** Days on which the lab is closed, `YYYY-MM-DD` in its time zone. */
  closedDays: readonly string[];
  lab: Lab;
  /** What is fitted on each frame, by place in the train. */
  rigs: readonly { frameId: string; links: readonly TrainPlace[]; chamberC: number | null }[];
  /** Spans in which a frame is worked besides the lab's hours. */
  extraShifts: readonly ({ frameId: string } & TimeWindow)[];
  jobs: readonly OpenJob[];
  /** The published plan; null before the first. */
  published: {
    id: string;
    version: number;
    bookings: readonly KeptBooking[];
    visits: readonly { itemId: string; startMs: number }[];
    /** Ids of jobs and visits as the planner placed them; empty for plans that were made before this was kept. */
    order: readonly string[];
  } | null;
  /** Last calibration of each item that needs one: when it is due, and for how long the next will hold. */
  dueDates: readonly { itemId: string; dueMs: number; holdsMs: number }[];
  /** How long finished work took, newest first. */
  durations: readonly { methodCode: string; specimens: number; setupMin: number; workMin: number }[];
}

/** A job that is not done: it is planned, or it runs. */
export interface OpenJob {
  id: string;
  reference: string;
  requestId: string;
  requestReference: string;
  title: string;
  state: JobState;
  ask: Ask;
  method: Method;
  material: Material | null;
  weight: number;
  dueMs: number | null;
  /** Specimens here and conditioned from then on; null while some are missing. */
  releasedMs: number | null;
  /** When the team said that the specimens will come. */
  expectedMs: number | null;
  /** Still to be tested. */
  specimensLeft: number;
  hold: boolean;
  pin: { frameId: string; startMs: number | null } | null;
  /** Frame, technician and train of a job that was taken. */
  on: {
    frameId: string;
    technicianId: string | null;
    train: readonly TrainPlace[];
    sinceMs: number;
    started: boolean;
  } | null;
}

/** A booking of the published plan, as far as the next plan has to know it. */
export interface KeptBooking {
  jobId: string;
  frameId: string;
  setupMs: number;
  startMs: number;
  train: readonly TrainPlace[];
  technicianId: string | null;
}

/** An item in its place in a load train. */
export interface TrainPlace {
  role: string;
  itemId: string;
}

/** A change that somebody tries before it is made: what the facts would be with it. */
export interface Overlay {
  /** Windows in which a frame is down besides its own. */
  down: readonly ({ frameId: string } & TimeWindow)[];
  /** Windows in which a frame is worked besides the lab's hours, and by whom. */
  extraShifts: readonly ({ frameId: string; technicianId: string } & TimeWindow)[];
  /** Windows in which a technician is away. */
  away: readonly ({ technicianId: string } & TimeWindow)[];
}

export const NO_OVERLAY: Overlay = { down: [], extraShifts: [], away: [] };
