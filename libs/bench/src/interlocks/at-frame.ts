import type { BenchCheck } from '../checks/bench-check.js';
import type { TrainProblem } from '../setup/train-problem.js';
import type { SpecimenLacks } from '../results/missing-results.js';
import type { ShiftCheckReason } from './shift-check-words.js';

/** A job at the frame as plain data, with all that an interlock looks at. */
export interface AtFrame {
  job: { reference: string; state: string; technicianId: string | null; checks: Readonly<Record<string, unknown>> };
  /** Who acts. */
  byId: string;
  method: { id: string; designation: string };
  /** Whether the technician of the job may run the method now. */
  authorised: boolean;
  frame: { id: string; tag: string } | null;
  /** Links of the train; `confirmedAt` is there once the tag was confirmed. */
  train: readonly { itemId: string; confirmedAt?: string }[];
  trainItems: readonly { role: string; item: { id: string; tag: string } }[];
  /** What hangs on the frame now. */
  rig: readonly { itemId: string }[];
  /** What the rules of matching say against the train from now to the end of the run. */
  problems: readonly TrainProblem[];
  /** Another job that has the frame now. */
  frameHolder: string | null;
  /** Why the cell needs a shift check; null while the last one holds. */
  shiftCheckReason: ShiftCheckReason | null;
  /** How long a shift check holds at most, min. */
  shiftCheckValidMin: number;
  checksAsked: readonly BenchCheck[];
  specimens: readonly { label: string; fate: string }[];
  /** Why the specimens that are still open were not tested; null when nobody said. */
  notTestedWhy: string | null;
  /** Specimens with the results that they lack, as they stand after the act. */
  lacks: readonly SpecimenLacks[];
}
