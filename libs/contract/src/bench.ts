import type { Instant, PersonRef } from './platform.js';
import type { JobMove, JobState } from './states.js';
import type { SpecimenView } from './requests.js';

export interface TrainItemView {
  role: string;
  itemId: string;
  tag: string;
  name: string;
  kind: string;
  place: string;
  lengthMm: number;
  massKg: number;
  /** The smallest rating in N (N·m for torque) at the test temperature, when it has one. */
  rating: number | null;
  ratingUnit: string | null;
}

/** One line of the setup sheet, in working order: first what comes off, then what stays, then what goes on. */
export interface SetupStepView {
  action: 'take-off' | 'keep' | 'put-on';
  item: TrainItemView;
  minutes: number;
  /** Its tag was confirmed, and nothing speaks against it now. */
  confirmed: boolean;
  confirmedAt: Instant | null;
  /** Why this item of the train must not be used any more, e.g. a calibration of a lower class; null while nothing is against it. */
  problem: string | null;
  /** Equal units that may stand in. */
  standIns: { itemId: string; tag: string }[];
}

/** One check before the first specimen. `auto` ones are answered by the system, the others are ticked at the frame. */
export interface BenchCheckView {
  key: string;
  label: string;
  detail: string;
  required: boolean;
  kind: 'tick' | 'value' | 'shift-check' | 'auto';
  unit?: string;
  done: boolean;
  doneAt: Instant | null;
  by: PersonRef | null;
  problem: string | null;
}

export interface JobView {
  id: string;
  reference: string;
  state: JobState;
  why: string | null;
  moves: JobMove[];
  request: { id: string; reference: string; title: string; dueAt: Instant | null };
  batch: { id: string; position: number; label: string; specimenCount: number; ask: Record<string, unknown> };
  method: {
    id: string;
    code: string;
    designation: string;
    title: string;
    testType: string;
    data: Record<string, unknown>;
  };
  material: { id: string; name: string } | null;
  frame: { id: string; tag: string; name: string } | null;
  technician: PersonRef | null;
  train: TrainItemView[];
  setup: SetupStepView[];
  checks: BenchCheckView[];
  cautions: string[];
  limitStops: { upperMm: number; lowerMm: number; sentence: string } | null;
  speeds: { label: string; valueMmMin: number }[];
  dimensionsNeeded: { key: string; label: string; unit: string; readings: number; nominal: number | null }[];
  resultsNeeded: { key: string; label: string; unit: string; typed: boolean }[];
  specimens: (SpecimenView & {
    results: ResultView[];
    curve: { id: string; rows: number } | null;
    reading: CurveReadingView | null;
    missing: MissingResultView[];
  })[];
  plannedStartAt: Instant | null;
  plannedEndAt: Instant | null;
  takenAt: Instant | null;
  startedAt: Instant | null;
  finishedAt: Instant | null;
  conditions: Record<string, unknown>;
  version: number;
}

/** A result that was asked for and that a tested specimen has no figure of. */
export interface MissingResultView {
  key: string;
  label: string;
  /** Why there is none, as a person said or as the curve shows; null while nobody said, and then the job cannot be finished. */
  why: string | null;
  /** What kept it from being found in the curve, e.g. a dimension that is missing. */
  hint: string | null;
}

/** The worker's last try to read a curve file of a specimen, until it is done. */
export interface CurveReadingView {
  taskId: string;
  state: 'waiting' | 'running' | 'failed';
  message: string;
}

export interface BenchView {
  mine: { id: string; reference: string; state: JobState; title: string; frameTag: string | null }[];
  next: {
    jobId: string;
    reference: string;
    title: string;
    frameTag: string;
    startsAt: Instant;
    requestReference: string;
    changeoverMin: number;
  } | null;
  /** Why there is nothing to take, in words. */
  nothingWhy: string | null;
  today: {
    jobId: string;
    reference: string;
    title: string;
    frameTag: string;
    startsAt: Instant;
    endsAt: Instant;
    state: JobState;
    technician: PersonRef | null;
  }[];
}

export interface TakeBody {
  frameId?: string;
}

export interface ConfirmBody {
  tag: string;
}

export interface ShiftCheckBody {
  cellId: string;
  reference: number;
  reading: number;
  unit: string;
}

export interface TickBody {
  key: string;
  value?: number;
  note?: string;
}

export interface DimensionsBody {
  dimensions: Record<string, number[]>;
}

export interface TypedResultsBody {
  results: { key: string; value: number; unit: string }[];
  /** Needed when a result is corrected. */
  why?: string;
  /** Results that this specimen has no figure of, each with the reason. */
  missing?: MissingWhy[];
}

/** Why there is no figure of a result that was asked for. */
export interface MissingWhy {
  key: string;
  why: string;
}

export interface WhyBody {
  why: string;
}

/** Something failed; `itemId` names the item, which gets a fault and is not used until it is repaired. */
export interface BlockBody extends WhyBody {
  itemId?: string;
}

export interface StandInBody {
  /** The item of the train that is not there. */
  itemId: string;
  /** Tag of the unit in its place. */
  tag: string;
}

export interface InvalidBody extends WhyBody {
  /** `invalid` unless it is said that the specimen was not tested at all, or that it is valid after all. */
  fate?: 'invalid' | 'not-tested' | 'valid';
}

export interface CurveConfirmBody {
  fileId: string;
  format: Record<string, unknown>;
}

export interface FinishBody {
  /** Why specimens that are still open were not tested; without it a job with open specimens is not finished. */
  notTestedWhy?: string;
  /** Results without a figure, each with the reason: of one specimen, or of every one that lacks it. */
  missing?: (MissingWhy & { specimenId?: string })[];
  conditions: { temperatureC?: number; humidityPct?: number; remarks?: string; deviations?: string };
}

export interface ResultView {
  key: string;
  label: string;
  value: number;
  unit: string;
  revision: number;
  origin: 'typed' | 'computed' | 'reduced';
  basis: Record<string, unknown>;
  flags: string[];
}
