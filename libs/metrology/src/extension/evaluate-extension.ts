import { refuseIfAny } from '#libs/errors/src/index.js';
import { extensionClassesOf } from '#libs/accuracy/src/index.js';
import { extensionFindings, gaugeLengthErrorPct, worstBiasMm } from './extension-findings.js';
import { extensionRanges } from './extension-range.js';
import { extensionReadingProblems } from './extension-readings.js';
import type { Note, VerifiedRange } from '../outcome.js';
import type { ExtensionFinding } from './extension-findings.js';
import type { ExtensionReadings, ExtensionStep } from './extension-readings.js';

export interface ExtensionStepOutcome {
  referenceMm: number;
  /** The run that is farthest off minus the reference, mm and % of the reference. */
  biasMm: number;
  biasPct: number;
  /** The resolution in % of the reference. */
  resolutionPct: number;
  /** The best class whose limits are all met here; null when not even the last one's are. */
  className: string | null;
  /** What keeps the step from the next better class (from the last class, when it has none); empty for the best. */
  heldBackBy: ExtensionFinding[];
}

export interface ExtensionOutcome {
  /** Measured minus nominal, % of nominal; null when there is no gauge length to measure. */
  gaugeLengthErrorPct: number | null;
  /** By extension, the smallest first. */
  steps: ExtensionStepOutcome[];
  ranges: VerifiedRange[];
  notes: Note[];
}

/**
 * From readings to class and verified range of an extensometer, by ISO 9513:2012 or ASTM E83.
 *
 * Each step takes its worst run. A class holds over the longest unbroken row of steps that meet it; one range is given
 * for each class that holds where the better ones do not. The gauge length's error counts at every step.
 *
 * @throws {InvalidInput} listing every reading that cannot be (see `extensionReadingProblems`)
 */
export function evaluateExtension(readings: ExtensionReadings): ExtensionOutcome {
  refuseIfAny(extensionReadingProblems(readings));
  const sorted = [...readings.steps].sort((a, b) => a.referenceMm - b.referenceMm);
  const steps = sorted.map((step) => stepOutcome(step, readings));
  return {
    gaugeLengthErrorPct: gaugeLengthErrorPct(readings),
    steps,
    ranges: extensionRanges(steps, readings.standard),
    notes: notesOn(steps),
  };
}

function stepOutcome(step: ExtensionStep, readings: ExtensionReadings): ExtensionStepOutcome {
  const { referenceMm } = step;
  const classes = extensionClassesOf(readings.standard);
  const unmet = classes.map((limits) => extensionFindings(step, readings, limits).filter(({ met }) => !met));
  const best = unmet.findIndex((missed) => missed.length === 0);
  const biasMm = worstBiasMm(step);
  return {
    referenceMm,
    biasMm,
    biasPct: (100 * biasMm) / referenceMm,
    resolutionPct: (100 * readings.resolutionMm) / referenceMm,
    className: classes[best]?.className ?? null,
    heldBackBy: (best === -1 ? unmet.at(-1) : unmet[best - 1]) ?? [],
  };
}

/** Steps of one calibration, ISO 9513:2012 (from memory, low): said, but not held against the class. */
const USUAL_STEPS = 10;

function notesOn(steps: readonly ExtensionStepOutcome[]): Note[] {
  if (steps.length >= USUAL_STEPS) return [];
  return [{ code: 'few-steps', sentence: `${steps.length} steps were taken; ${USUAL_STEPS} are usual.` }];
}
