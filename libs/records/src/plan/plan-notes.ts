import type { CauseView, Instant, PlanFigures, PlanPlace } from '#libs/contract/src/index.js';

/** By frame id, why a job cannot run there; an empty list means that it can. */
export type Fits = Record<string, string[]>;

/** What the planner says of a plan as a whole; kept in `plan.notes`. */
export interface PlanNotes {
  figures: PlanFigures;
  freezeUntil: Instant;
  horizonTo: Instant;
  unplaced: { jobId: string; reasons: string[]; fits: Fits }[];
  /** Booked and open hours of each frame, week by week. */
  load: { frameId: string; weeks: { weekStartsAt: Instant; bookedHours: number; availableHours: number }[] }[];
  pools: { pool: string; label: string; loadPct: number; binds: boolean }[];
  /** Ids of jobs and visits in the order in which the planner placed them. Older plans have none. */
  order?: readonly string[];
  /** How jobs moved since the plan before, and why. Plans that were made before this was kept have none. */
  changes?: { jobId: string; was: PlanPlace | null; is: PlanPlace | null; why: string }[];
}

/** What the planner says of one booking; kept in `booking.why`. */
export interface BookingNotes {
  /** Why this frame. */
  frame: string[];
  alternatives: { frameTag: string; sentence: string }[];
  /** For a late job: what made it late, with hours. */
  causes: CauseView[];
  /** Chance that it ends after its due instant, percent; null until the replay was made. */
  riskPct: number | null;
  fits: Fits;
}

export const NO_NOTES: BookingNotes = { frame: [], alternatives: [], causes: [], riskPct: null, fits: {} };
