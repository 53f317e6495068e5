import type { CalibratedQuantity, ItemKind, ItemState, Ratings, Utility } from '#libs/matching/src/index.js';
import type { Day, Instant, PersonRef } from './platform.js';

/** Computed from dates and faults at the moment of asking. */
export type CalibrationStatus = 'not-needed' | 'in-force' | 'due-soon' | 'overdue' | 'never' | 'out-of-use';

export interface CalibratedRangeView {
  direction: CalibratedQuantity;
  className: string | null;
  from: number;
  to: number;
  unit: 'N' | 'mm' | 'N·m' | '°C' | 'mm/min';
}

/** One line of the register. */
export interface ItemView {
  id: string;
  tag: string;
  kind: ItemKind;
  name: string;
  model: string;
  serialNumber: string;
  state: ItemState;
  place: string;
  /** The frame that it is fitted on now. */
  fittedOn: { frameId: string; frameTag: string; role: string } | null;
  massKg: number;
  lengthMm: number;
  ratings: Ratings;
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: readonly Utility[];
  needsCalibration: boolean;
  calibrationIntervalMonths: number | null;
  calibrationStatus: CalibrationStatus;
  calibrationDueAt: Instant | null;
  /** The fields of its kind by the matching core's `ITEM_FIELDS`. */
  details: Record<string, unknown>;
  version: number;
}

export interface CalibrationView {
  id: string;
  standard: string;
  certificateNumber: string;
  laboratory: string;
  performedAt: Instant;
  validFrom: Instant;
  dueAt: Instant;
  ranges: CalibratedRangeView[];
  asFound: 'within' | 'out-of-tolerance' | 'not-recorded';
  readings: Record<string, unknown> | null;
  certificateFileId: string | null;
  replaces: string | null;
  enteredBy: PersonRef;
  enteredAt: Instant;
}

export interface FaultView {
  id: string;
  what: string;
  openedBy: PersonRef;
  openedAt: Instant;
  closedAt: Instant | null;
  remedy: string | null;
}

export interface ItemDetail extends ItemView {
  calibrations: CalibrationView[];
  faults: FaultView[];
  windows: {
    id: string;
    kind: 'down' | 'held' | 'calibration-visit' | 'extra-shift';
    startsAt: Instant;
    endsAt: Instant;
    why: string;
  }[];
  shiftChecks: {
    at: Instant;
    reference: number;
    reading: number;
    unit: string;
    errorPct: number;
    passed: boolean;
    technician: PersonRef;
  }[];
  upcomingJobs: { jobId: string; reference: string; startsAt: Instant }[];
}

export interface RigView {
  frame: { id: string; tag: string; name: string };
  links: { role: string; itemId: string; tag: string; name: string; kind: ItemKind }[];
  /** Another one as soon as something else hangs on the frame; who changes it has to say it. */
  version: number;
}

export interface SaveItemBody {
  tag: string;
  kind: ItemKind;
  name: string;
  model?: string;
  serialNumber?: string;
  place?: string;
  massKg: number;
  lengthMm: number;
  ratings: Ratings;
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: readonly Utility[];
  needsCalibration: boolean;
  calibrationIntervalMonths?: number | null;
  details: Record<string, unknown>;
}

export interface ItemStateBody {
  state: ItemState;
  why: string;
}

/** Applied force and three runs of readings per step, for one direction, all in the item's unit. */
export interface ForceReadingsBody {
  direction: 'tension' | 'compression' | 'torque';
  unit: string;
  capacity: number;
  resolution: number;
  zeroResidual: number;
  /** Which force was brought to the nominal value: the indicated one (then the runs are true forces), or the true one. */
  held?: 'indicated' | 'true';
  steps: { nominal: number; runs: [number, number, number]; falling?: number | null }[];
}

export interface ExtensionReadingsBody {
  unit: string;
  gaugeLengthNominalMm: number;
  gaugeLengthMeasuredMm: number;
  resolutionMm: number;
  steps: { referenceMm: number; runs: [number, number] }[];
}

export interface RecordCalibrationBody {
  standard: string;
  certificateNumber: string;
  laboratory: string;
  /** The day that the certificate states, by the lab's calendar, or an instant. */
  performedAt: Day;
  dueAt?: Day;
  /** Either the ranges as the certificate states them … */
  ranges?: CalibratedRangeView[];
  /** … or the readings that class and range are computed from. */
  forceReadings?: ForceReadingsBody[];
  extensionReadings?: ExtensionReadingsBody;
  asFound: 'within' | 'out-of-tolerance' | 'not-recorded';
  certificateFileId?: string | null;
  replaces?: string | null;
}

/** Class and range with the figures per step, before anything is kept. */
export interface EvaluationView {
  ranges: CalibratedRangeView[];
  steps: Record<string, unknown>[];
  notes: string[];
}

export interface DueLine {
  item: { id: string; tag: string; name: string; kind: ItemKind };
  dueAt: Instant;
  status: CalibrationStatus;
  /** Planned jobs that it would stop if nobody calibrates it. */
  stops: { jobId: string; reference: string; requestReference: string; startsAt: Instant }[];
}

/** What an item touched since its last good calibration or check. */
export interface ImpactView {
  item: { id: string; tag: string; name: string };
  since: Instant;
  sinceWhy: string;
  /** When it was found wrong and put right, or now. */
  until: Instant;
  jobs: {
    id: string;
    reference: string;
    requestId: string;
    requestReference: string;
    finishedAt: Instant | null;
    results: number;
  }[];
  reports: { id: string; number: string; revision: number; requestReference: string }[];
  people: PersonRef[];
  upcomingJobs: { id: string; reference: string; startsAt: Instant }[];
}

export interface NonconformityView {
  id: string;
  reference: string;
  item: { id: string; tag: string } | null;
  what: string;
  since: Instant;
  touched: Record<string, unknown>;
  state: 'open' | 'closed';
  decision: string | null;
  openedBy: PersonRef;
  openedAt: Instant;
  closedAt: Instant | null;
  version: number;
}

/** How the letters of a text file are kept. */
export type TextEncoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

/** What a CSV import would do, or did. While one line is bad nothing is kept: the import is refused, and its try tells every bad line. */
export interface ImportView {
  dryRun: boolean;
  /** As which the file was read. */
  encoding: TextEncoding;
  lines: number;
  created: number;
  updated: number;
  /** What is there already, just as the file says. */
  unchanged: number;
  problems: { line: number; field: string; sentence: string }[];
}
