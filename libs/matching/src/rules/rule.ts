/*
 * What a rule is, and what it may say. The rules import only the register and the needs of a request; which parts of a train a check
 * looks at, and what else lets the search skip work, stands on the rule itself, and the search takes it from there.
 */
import type { CalibrationNeed } from '../ask/calibration-need.js';
import type { Needs } from '../ask/needs.js';
import type { MatchSettings } from '../ask/settings.js';
import type { FrameDetails, Item, TimeWindow } from '../register/item.js';
import type { Technician } from '../register/lab.js';
import type { Outcome } from './outcome.js';
import type { Parts } from './parts.js';
import type { Report } from './report.js';
import type { Sentence } from './sentence.js';

/** What the rules judge by, besides the train. */
export interface Context {
  needs: Needs;
  settings: MatchSettings;
  /** The span of time in which the test would run. */
  period: TimeWindow;
  /** What the test needs of the calibration of a cell, and of an extensometer where it takes one. */
  cellNeed: CalibrationNeed;
  extensometerNeed: CalibrationNeed | null;
  technicians: readonly Technician[];
  /** When somebody who may run the method is on shift. */
  staffed: readonly TimeWindow[];
  /** When an item (or any unit of its pool) is usable for these needs. */
  windowsOf(item: Item): readonly TimeWindow[];
  /** When all of these are usable at once and the method is staffed. */
  commonWindows(items: readonly Item[]): readonly TimeWindow[];
}

/** One part of a train, as a check names it. */
export type PartName = keyof Parts;

/**
 * A check looks at some parts of a train only, so that the search can drop a part without trying it in every train. It reports what it
 * finds and returns how bad that is. A train obeys a rule when no check of it fails.
 */
export interface Check {
  /** Every part that the check looks at; `test/properties/matching` holds it to that. */
  sees: readonly PartName[];
  /**
   * For a check of a frame with one other part: the fields of the frame that it reads. Frames that agree in these share what was found.
   */
  frameFields?: readonly (keyof FrameDetails)[];
  /** Where the parts pass by themselves: once it fails, it also fails with anything heavier on the cell. */
  heavierFailsToo?: true;
  judge(parts: Parts, context: Context, report: Report): Outcome;
}

export interface Rule<Code extends string = string> {
  code: Code;
  /** Standard and clause, or `common practice, no source`. */
  source: string;
  checks: readonly Check[];
  /** The sentence of each reason that its checks report. */
  sentences: Readonly<Record<string, Sentence>>;
  /** One part of a train alone brings its cautions, and never two parts of one train, so that they are priced with that part. */
  cautionsByOnePart?: true;
  /** A frame that fails it by itself cannot run the test at all, whatever hangs on it: no train is worth showing. */
  rulesOutFrame?: true;
}

/** Keeps the rule's code as a literal, from which the list of all codes follows. */
export function rule<const Code extends string>(facts: Rule<Code>): Rule<Code> {
  return facts;
}
