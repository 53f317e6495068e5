import type {
  CalibratedRangeView,
  EvaluationView,
  ExtensionReadingsBody,
  ForceReadingsBody,
} from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import {
  evaluateExtension,
  evaluateForce,
  extensionReadingProblems,
  forceReadingProblems,
} from '#libs/metrology/src/index.js';
import type { ExtensionReadings, ForceReadings, VerifiedRange } from '#libs/metrology/src/index.js';
import { isUnit, toInternal, unitsOf } from '#libs/units/src/index.js';

/** Readings of one calibration: of a force or torque transducer by direction, or of an extensometer. */
export interface Readings {
  standard: string;
  forceReadings?: readonly ForceReadingsBody[] | undefined;
  extensionReadings?: ExtensionReadingsBody | undefined;
}

/**
 * From readings to classes and ranges, with the figures of every step.
 *
 * @throws InvalidInput naming every reading that cannot be, by its path in the body
 */
export function evaluate({ standard, forceReadings = [], extensionReadings }: Readings): EvaluationView {
  const forces = forceReadings.map((body, index) => forceEvaluation(body, `forceReadings[${index}]`));
  const extension = extensionReadings ? [extensionEvaluation(standard, extensionReadings)] : [];
  const all = [...forces, ...extension];
  if (all.length === 0) {
    throw new InvalidInput([
      fieldProblem({
        field: 'forceReadings',
        found: null,
        allowed: 'readings of a direction, or extensionReadings',
        unit: '',
      }),
    ]);
  }
  return {
    ranges: all.flatMap(({ ranges }) => ranges),
    steps: all.flatMap(({ steps }) => steps),
    notes: all.flatMap(({ notes }) => notes),
  };
}

function forceEvaluation(body: ForceReadingsBody, path: string): EvaluationView {
  const { direction } = body;
  const readings = forceInternal(body, path);
  refuseBelow(path, forceReadingProblems(readings));
  const { ranges, steps, notes } = evaluateForce(readings);
  const none = { direction, className: null, from: 0, to: readings.capacity, unit: readings.unit };
  return {
    ranges: ranges.length > 0 ? ranges.map(rangeView) : [none],
    steps: steps.map((step) => ({ direction, unit: readings.unit, ...step })),
    notes: notes.map(({ sentence }) => `${direction}: ${sentence}`),
  };
}

function forceInternal(body: ForceReadingsBody, path: string): ForceReadings {
  const { direction, capacity, resolution, zeroResidual, held = 'indicated', steps } = body;
  const quantity = direction === 'torque' ? 'torque' : 'force';
  const convert = converter(body.unit, quantity, `${path}.unit`);
  return {
    direction,
    unit: direction === 'torque' ? 'N·m' : 'N',
    held,
    ...{ capacity: convert(capacity), resolution: convert(resolution), zeroResidual: convert(zeroResidual) },
    steps: steps.map(({ nominal, runs, falling }) => ({
      nominal: convert(nominal),
      runs: runs.map(convert),
      falling: typeof falling === 'number' ? convert(falling) : null,
    })),
  };
}

function extensionEvaluation(standard: string, body: ExtensionReadingsBody): EvaluationView {
  const path = 'extensionReadings';
  if (standard !== 'ISO 9513' && standard !== 'ASTM E83') {
    const allowed = 'ISO 9513 or ASTM E83 for readings of an extensometer';
    throw new InvalidInput([fieldProblem({ field: 'standard', found: standard, allowed, unit: '' })]);
  }
  const convert = converter(body.unit, 'length', `${path}.unit`);
  const { gaugeLengthNominalMm, gaugeLengthMeasuredMm, resolutionMm } = body;
  const steps = body.steps.map(({ referenceMm, runs }) => ({ referenceMm, runs: runs.map(convert) }));
  const readings: ExtensionReadings = { standard, gaugeLengthNominalMm, gaugeLengthMeasuredMm, resolutionMm, steps };
  refuseBelow(path, extensionReadingProblems(readings));
  const outcome = evaluateExtension(readings);
  const to = Math.max(0, ...steps.map(({ referenceMm }) => referenceMm));
  const none = { direction: 'extension' as const, className: null, from: 0, to, unit: 'mm' as const };
  return {
    ranges: outcome.ranges.length > 0 ? outcome.ranges.map(rangeView) : [none],
    steps: outcome.steps.map((step) => ({ ...step, gaugeLengthErrorPct: outcome.gaugeLengthErrorPct })),
    notes: outcome.notes.map(({ sentence }) => sentence),
  };
}

function converter(unit: string, quantity: 'force' | 'torque' | 'length', field: string): (value: number) => number {
  if (isUnit(unit, quantity)) return (value) => toInternal(value, unit);
  throw new InvalidInput([
    fieldProblem({ field, found: unit, allowed: `one of ${unitsOf(quantity).join(', ')}`, unit: '' }),
  ]);
}

function rangeView({ direction, className, from, to, unit }: VerifiedRange): CalibratedRangeView {
  return { direction, className, from, to, unit };
}

function refuseBelow(path: string, problems: ReturnType<typeof forceReadingProblems>): void {
  if (problems.length === 0) return;
  throw new InvalidInput(
    problems.map((problem) => ({
      ...problem,
      field: `${path}.${problem.field}`,
      sentence: `${path}.${problem.sentence}`,
    })),
  );
}
