import type { Instant, PersonRef } from './platform.js';
import type { BatchResults, CurveView } from './results.js';
import type { ReportState } from './states.js';

/** The whole content of a report as plain data: everything that the PDF, the page, the CSV and the JSON show. */
export interface ReportDocument {
  title: string;
  number: string;
  revision: number;
  amendment: string | null;
  replaces: string | null;
  laboratory: { name: string; address: string; place: string; contact: string };
  customer: { team: string; requester: string; contact: string };
  request: { reference: string; title: string; purpose: string };
  summary: string[];
  batches: ReportBatch[];
  sampling: string;
  deviations: string[];
  opinions: string[];
  conformity: { specification: string; statement: string; rule: string; detail: string }[];
  uncertaintyNote: string;
  relatesOnlyToItems: string;
  dates: { received: Instant | null; testedFrom: Instant | null; testedTo: Instant | null; issued: Instant | null };
  external: string;
  authorisedBy: { name: string; function: string } | null;
  verifyPath: string;
}

export interface ReportBatch {
  results: BatchResults;
  curves: CurveView[];
  /** The same curves as stress over strain, by which their results were read; absent in reports made before they were drawn. */
  stressStrain?: CurveView[];
  method: { designation: string; version: number; title: string };
  specimens: {
    label: string;
    description: string;
    condition: string;
    fate: string;
    /** Absent in reports made before they were kept. */
    sizes?: MeasuredSize[];
  }[];
  conditions: {
    temperatureC: number | null;
    humidityPct: number | null;
    speed: string;
    conditioning: string;
    remarks: string;
  };
  items: { role: string; tag: string; name: string; calibration: string; certificate: string; dueAt: Instant | null }[];
  technician: string;
}

/** A size measured on one specimen; `mean` is that of its readings as it is printed. */
export interface MeasuredSize {
  key: string;
  label: string;
  unit: string;
  readings: number[];
  mean: string;
}

/** A line that ISO/IEC 17025:2017 7.8 asks for and that is not there: it blocks issuing. */
export interface MissingLine {
  clause: string;
  what: string;
  how: string;
}

export interface ReportLine {
  id: string;
  number: string;
  revision: number;
  state: ReportState;
  request: { id: string; reference: string; title: string };
  team: string;
  issuedAt: Instant | null;
  authorisedBy: PersonRef | null;
}

export interface ReportView extends ReportLine {
  document: ReportDocument;
  missing: MissingLine[];
  remarks: ReportRemarks;
  preparedBy: PersonRef;
  preparedAt: Instant;
  sha256: string | null;
  hasFile: boolean;
  version: number;
}

export interface ReportRemarks {
  title?: string;
  deviations?: string;
  opinions?: string;
  sampling?: string;
  external?: string;
}

export interface VerifyView {
  number: string;
  revision: number;
  known: boolean;
  matches: boolean | null;
  supersededBy: number | null;
  issuedAt: Instant | null;
}
