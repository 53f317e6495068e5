import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { ExtensionStandard } from '#libs/accuracy/src/index.js';

/** One extension at which the extensometer was compared with the calibration apparatus, and what it showed, in mm. */
export interface ExtensionStep {
  /** l_t, the true extension, above 0. Calibrate the other sense on its own, by size. */
  referenceMm: number;
  /** l_i of every run. */
  runs: readonly number[];
}

/** Readings of one sense of one extensometer, in mm. */
export interface ExtensionReadings {
  standard: ExtensionStandard;
  /** L_e, the gauge length that its maker states; for a deflectometer, the length that strains are referred to. */
  gaugeLengthNominalMm: number;
  /** As measured; null for an instrument without a gauge length of its own. */
  gaugeLengthMeasuredMm: number | null;
  /** r, the smallest extension that can be read. */
  resolutionMm: number;
  steps: readonly ExtensionStep[];
}

const FEWEST_RUNS = 2;

/** Everything that is wrong with readings, by field; nothing when they can be evaluated. */
export function extensionReadingProblems(readings: ExtensionReadings): FieldProblem[] {
  const { gaugeLengthNominalMm, gaugeLengthMeasuredMm, resolutionMm, steps } = readings;
  const aboveZero = { unit: 'mm', above: 0 };
  const problems = [
    numberProblem('gaugeLengthNominalMm', gaugeLengthNominalMm, aboveZero),
    gaugeLengthMeasuredMm === null ? null : numberProblem('gaugeLengthMeasuredMm', gaugeLengthMeasuredMm, aboveZero),
    numberProblem('resolutionMm', resolutionMm, aboveZero),
    ...steps.flatMap((step, index) => stepProblems(step, index, steps)),
  ];
  return problems.filter((problem) => problem !== null);
}

function stepProblems({ referenceMm, runs }: ExtensionStep, index: number, steps: readonly ExtensionStep[]) {
  const path = `steps[${index}]`;
  const isRepeated = steps.findIndex((other) => other.referenceMm === referenceMm) < index;
  const repeated = {
    field: `${path}.referenceMm`,
    found: referenceMm,
    allowed: 'an extension that no other step has',
    unit: '',
  };
  const fewRuns = { field: `${path}.runs`, found: runs.length, allowed: `at least ${FEWEST_RUNS}`, unit: 'runs' };
  return [
    numberProblem(`${path}.referenceMm`, referenceMm, { unit: 'mm', above: 0 }),
    ...runs.map((run, at) => numberProblem(`${path}.runs[${at}]`, run, { unit: 'mm' })),
    isRepeated ? fieldProblem(repeated) : null,
    runs.length < FEWEST_RUNS ? fieldProblem(fewRuns) : null,
  ];
}
