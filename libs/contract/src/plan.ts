import type { Instant } from './platform.js';
import type { JobState } from './states.js';

export interface BookingView {
  id: string;
  kind: 'job' | 'calibration-visit';
  jobId: string | null;
  jobReference: string | null;
  requestId: string | null;
  requestReference: string | null;
  title: string;
  state: JobState | null;
  frameId: string | null;
  setupAt: Instant;
  startsAt: Instant;
  endsAt: Instant;
  changeoverMin: number;
  dueAt: Instant | null;
  lateHours: number;
  pinned: boolean;
  technicianId: string | null;
  train: { role: string; itemId: string; tag: string }[];
}

export interface LaneView {
  frame: { id: string; tag: string; name: string; capacityN: number | null; torqueNm: number | null; state: string };
  open: { startsAt: Instant; endsAt: Instant }[];
  down: { id: string; kind: string; startsAt: Instant; endsAt: Instant; why: string }[];
  bookings: BookingView[];
  /** Booked ÷ available hours, week by week. */
  load: { weekStartsAt: Instant; bookedHours: number; availableHours: number }[];
}

export interface CauseView {
  kind: 'release' | 'item' | 'changeover' | 'calibration' | 'capacity' | 'technician' | 'calendar' | 'pin' | 'work';
  hours: number;
  sentence: string;
}

export interface LateView {
  jobId: string;
  jobReference: string;
  requestId: string;
  requestReference: string;
  title: string;
  dueAt: Instant;
  endsAt: Instant | null;
  lateHours: number;
  /** Chance in percent that it is late, when it is not late yet. */
  riskPct: number | null;
  causes: CauseView[];
}

/** Where a job is in a plan. */
export interface PlanPlace {
  frameTag: string;
  startsAt: Instant;
}

/** How a job's place differs from the plan before; null where a plan has no place for it. */
export interface PlanChangeView {
  jobId: string;
  jobReference: string;
  requestId: string;
  title: string;
  was: PlanPlace | null;
  is: PlanPlace | null;
  why: string;
}

export interface PlanFigures {
  weightedLatenessHours: number;
  lateJobs: number;
  changeoverHours: number;
  movedHours: number;
  jobs: number;
}

export interface PlanView {
  id: string;
  version: number;
  publishedAt: Instant;
  madeBy: string;
  cause: string;
  figures: PlanFigures;
  horizon: { from: Instant; to: Instant };
  freezeUntil: Instant;
  lanes: LaneView[];
  visits: BookingView[];
  late: LateView[];
  unplaced: { jobId: string; jobReference: string; requestId: string; title: string; reasons: string[] }[];
  held: { jobId: string; jobReference: string; requestId: string; title: string; why: string }[];
  pools: { pool: string; label: string; loadPct: number; binds: boolean }[];
  /** What the newest plan that moved a job moved, against the plan before it; in the order of time. */
  changes: PlanChangeView[];
  /** The plan that moved them; null while none did, and for a trial plan. */
  changedBy: { version: number; publishedAt: Instant } | null;
  /** True while newer facts wait for the next plan. */
  stale: boolean;
}

export type TrialEdit =
  | { kind: 'move'; jobId: string; frameId: string; startsAt: Instant }
  | { kind: 'unpin'; jobId: string }
  | { kind: 'hold'; jobId: string; why: string }
  | { kind: 'unhold'; jobId: string }
  | { kind: 'frame-down'; frameId: string; startsAt: Instant; endsAt: Instant; why: string }
  | { kind: 'extra-shift'; frameId: string; personId: string; startsAt: Instant; endsAt: Instant }
  | { kind: 'extra-item'; likeItemId: string }
  | { kind: 'technician-off'; personId: string; startsAt: Instant; endsAt: Instant }
  | { kind: 'weight'; jobId: string; weight: number };

export interface PlanComparison {
  before: PlanFigures;
  after: PlanFigures;
  later: { jobId: string; jobReference: string; title: string; hours: number }[];
  earlier: { jobId: string; jobReference: string; title: string; hours: number }[];
  movedFrame: { jobId: string; jobReference: string; from: string; to: string }[];
}

export interface TrialView {
  id: string;
  name: string;
  basedOnVersion: number;
  state: 'open' | 'published' | 'dropped';
  edits: TrialEdit[];
  plan: PlanView | null;
  comparison: PlanComparison | null;
  /** Edits that cannot be made, by their place in the list, each with its reasons. */
  refused: { edit: number; reasons: string[] }[];
  /** Its plan does not follow from all of its changes yet: it is being made. */
  pending: boolean;
  /** The lab changed since its plan was made. */
  stale: boolean;
  version: number;
}

/** Would this job fit there, and if not, why not: asked while a job is held over a lane. */
export interface FitView {
  frameId: string;
  fits: boolean;
  reasons: string[];
}

export interface WhyView {
  jobId: string;
  whyThisFrame: string[];
  alternatives: { frameTag: string; sentence: string }[];
  causes: CauseView[];
}

export interface HelpView {
  suggestions: { what: string; kind: string; savesWeightedHours: number; lateJobsFewer: number }[];
}
