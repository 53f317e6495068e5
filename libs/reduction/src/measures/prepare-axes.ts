import { CURVE_CHANNELS } from '../curve/curve.js';
import type { Curve } from '../curve/curve.js';
import type { ReductionRecipe } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';
import type { AxisScale, CurveAxes, Flag, ReductionRefusal } from './reduction-outcome.js';
import { alongAxisOf } from './strain-source.js';
import type { AlongAxis } from './strain-source.js';
import { upAxisOf } from './stress-factor.js';

/** The two columns that are drawn, and what is needed to lead back from them to load and travel. */
export interface PreparedAxes {
  readonly axes: CurveAxes;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** y before a correction for large deflection. */
  readonly plainY: Float64Array;
  readonly stressPerLoad: number | null;
  readonly alongPerTravel: number | null;
  readonly stressLacks: string | null;
  readonly strainLacks: string | null;
  readonly isCrosshead: boolean;
  /** Row of the record that the first value belongs to. */
  readonly firstRow: number;
  /** Of the two columns, out of the recorded ones. */
  readonly xScale: AxisScale | null;
  readonly yScale: AxisScale | null;
  readonly flags: readonly Flag[];
}

/** Scales and turns the columns so that the test runs to positive x and y. */
export function prepareAxes(
  curve: Curve,
  recipe: ReductionRecipe,
  dimensions: SpecimenDimensions,
): PreparedAxes | ReductionRefusal {
  const up = chooseUp(curve, recipe, dimensions);
  if ('reason' in up) return up;
  const along = alongAxisOf(curve, recipe, dimensions);
  const extremes = extremesOf(up.values);
  if (!extremes) return { reason: 'not-finite', what: up.yName };
  const { least, most, leastIndex, mostIndex } = extremes;
  if (least === 0 && most === 0) return { reason: 'no-load', what: up.yName };
  const isTurned = -least > most;
  const alongAxis = alongValues(along, curve.pointCount, isTurned ? leastIndex : mostIndex);
  if (!alongAxis) return { reason: 'not-finite', what: along.xName };
  const factor = isTurned ? -up.factor : up.factor;
  const y = scaled(up.values, factor, 0);
  return {
    axes: { xName: along.xName, xUnit: along.xUnit, yName: up.yName, yUnit: up.yUnit },
    x: alongAxis.x,
    y,
    plainY: y,
    stressPerLoad: up.stressPerLoad,
    alongPerTravel: along.values === null || along.values === curve.strain ? null : along.factor,
    stressLacks: up.lacks,
    strainLacks: along.lacks,
    isCrosshead: along.isCrosshead,
    firstRow: 0,
    xScale: scaleOf(curve, along.values, alongAxis),
    yScale: scaleOf(curve, up.values, { factor, start: 0 }),
    flags: isTurned ? [{ code: 'sign-turned', found: least * up.factor, allowed: 0, unit: up.yUnit }] : [],
  };
}

interface ChosenUp {
  readonly yName: CurveAxes['yName'];
  readonly yUnit: string;
  readonly values: Float64Array;
  readonly factor: number;
  readonly stressPerLoad: number | null;
  readonly lacks: string | null;
}

/** Our own dimensions go before a stress that another program computed. */
function chooseUp(curve: Curve, recipe: ReductionRecipe, dimensions: SpecimenDimensions): ChosenUp | ReductionRefusal {
  const load = recipe.kind === 'torsion' ? curve.torqueNm : curve.forceN;
  const { yName, yUnit, factor } = upAxisOf(recipe, dimensions);
  const known = typeof factor === 'number' ? factor : null;
  if (load && known !== null) return { yName, yUnit, values: load, factor: known, stressPerLoad: known, lacks: null };
  if (curve.stressMPa && yName === 'stress') {
    return { yName, yUnit, values: curve.stressMPa, factor: 1, stressPerLoad: known, lacks: null };
  }
  if (!load) return { reason: 'no-load-column', what: recipe.kind === 'torsion' ? 'torqueNm' : 'forceN' };
  const lacks = typeof factor === 'number' ? null : factor.lacks;
  const [name, unit] = recipe.kind === 'torsion' ? (['torque', 'N·m'] as const) : (['load', 'N'] as const);
  return { yName: name, yUnit: unit, values: load, factor: 1, stressPerLoad: 1, lacks };
}

function extremesOf(values: Float64Array) {
  let [least, most, leastIndex, mostIndex] = [Infinity, -Infinity, 0, 0];
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (!Number.isFinite(value)) return null;
    if (value < least) [least, leastIndex] = [value, at];
    if (value > most) [most, mostIndex] = [value, at];
  }
  return { least, most, leastIndex, mostIndex };
}

function alongValues(along: AlongAxis, pointCount: number, peakIndex: number) {
  if (!along.values) return { x: Float64Array.from({ length: pointCount }, (_, row) => row), factor: 1, start: 0 };
  if (!along.values.every(Number.isFinite)) return null;
  const start = along.fromStart ? along.values[0]! : 0;
  const factor = runsDown(along.values, peakIndex) ? -along.factor : along.factor;
  return { x: scaled(along.values, factor, start), factor, start };
}

function scaleOf(
  curve: Curve,
  values: Float64Array | null,
  { factor, start }: { factor: number; start: number },
): AxisScale | null {
  const channel = CURVE_CHANNELS.find((each) => values !== null && curve[each] === values);
  return channel === undefined ? null : { channel, factor, start };
}

/** Whether the column goes further down than up on its way to the peak; what an extensometer shows once it is off does not count. */
function runsDown(values: Float64Array, peakIndex: number): boolean {
  let [least, most] = [0, 0];
  for (let at = 1; at <= peakIndex; at++) {
    const gone = values[at]! - values[0]!;
    if (gone < least) least = gone;
    if (gone > most) most = gone;
  }
  return -least > most;
}

/** (value − start) · factor, without a minus before zero; the column itself where nothing changes, since curves are long. */
function scaled(values: Float64Array, factor: number, start: number): Float64Array {
  return factor === 1 && start === 0 ? values : values.map((value) => (value - start) * factor + 0);
}
