import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';

/** One force at which the machine was compared with the reference, and what was read there. All in the readings' unit. */
export interface ForceStep {
  /** The force that was held: the indicated one, or the true one (see `held`). */
  nominal: number;
  /** What the other side showed in three rising runs. */
  runs: readonly number[];
  /** What it showed on the way down; null when reversibility was not asked for. */
  falling: number | null;
}

/**
 * Readings of one direction of one range, ISO 7500-1.
 *
 * Every figure is in `unit`. `held` says which force was brought to the nominal value in each run: the indicated one (the
 * runs are then true forces) or the true one (the runs are then indications).
 */
export interface ForceReadings {
  direction: 'tension' | 'compression' | 'torque';
  unit: 'N' | 'N·m';
  /** F_N, the maximum of the range. */
  capacity: number;
  /** r, the resolution of the indicator (see `indicatorResolution`). */
  resolution: number;
  /** F_i0, what the indicator shows after the force is removed; either sign. */
  zeroResidual: number;
  held: 'indicated' | 'true';
  steps: readonly ForceStep[];
}

export const RUNS = 3;

/** Everything that is wrong with readings, by field; nothing when they can be evaluated. */
export function forceReadingProblems(readings: ForceReadings): FieldProblem[] {
  const { unit, capacity, resolution, zeroResidual, steps } = readings;
  const problems = [
    numberProblem('capacity', capacity, { unit, above: 0 }),
    numberProblem('resolution', resolution, { unit, above: 0, max: capacity }),
    numberProblem('zeroResidual', zeroResidual, { unit, above: -capacity, below: capacity }),
    ...steps.flatMap((step, index) => stepProblems(step, `steps[${index}]`, readings)),
    ...repeatedProblems(steps),
  ];
  return problems.filter((problem) => problem !== null);
}

function stepProblems({ nominal, runs, falling }: ForceStep, path: string, { unit, capacity }: ForceReadings) {
  const count = { field: `${path}.runs`, found: runs.length, allowed: `exactly ${RUNS}`, unit: 'runs' };
  return [
    numberProblem(`${path}.nominal`, nominal, { unit, above: 0, max: capacity }),
    runs.length === RUNS ? null : fieldProblem(count),
    ...runs.map((run, index) => numberProblem(`${path}.runs[${index}]`, run, { unit, above: 0 })),
    falling === null ? null : numberProblem(`${path}.falling`, falling, { unit, above: 0 }),
  ];
}

function repeatedProblems(steps: readonly ForceStep[]): FieldProblem[] {
  const nominals = steps.map(({ nominal }) => nominal);
  return nominals.flatMap((nominal, index) =>
    nominals.indexOf(nominal) === index
      ? []
      : [
          fieldProblem({
            field: `steps[${index}].nominal`,
            found: nominal,
            allowed: 'a force that no other step has',
            unit: '',
          }),
        ],
  );
}
