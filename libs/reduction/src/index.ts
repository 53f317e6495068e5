export { checkCurveFormat } from './curve/check-curve-format.js';
export { createCurveReader } from './curve/create-curve-reader.js';
export type { CurveReader, CurveReaderOptions } from './curve/create-curve-reader.js';
export { CHANNEL_QUANTITIES } from './curve/channel-units.js';
export { CURVE_CHANNELS } from './curve/curve.js';
export type { Curve, CurveChannel } from './curve/curve.js';
export type {
  CurveColumn,
  CurveFormat,
  DecimalMark,
  Delimiter,
  FormatDoubt,
  FormatProposal,
  TextEncoding,
} from './curve/curve-format.js';
export type { CurveReading, LineProblem, ProblemReason, ReaderLimits } from './curve/curve-reading.js';
export { HEAD_BYTES, proposeFormat } from './curve/propose-format.js';
export { sayDoubt, sayProblem } from './curve/say-problem.js';
export { rowsToDraw } from './measures/rows-to-draw.js';
export type {
  AxisScale,
  CurveAxes,
  Flag,
  FlagCode,
  MissingReason,
  MissingResult,
  ReducedResult,
  ReductionOutcome,
  ReductionRefusal,
  ResultPoint,
  Sensitivity,
  SlopeLine,
} from './measures/reduction-outcome.js';
export { sayFlag, sayMissing } from './measures/say-flag.js';
export { RESULT_KEYS } from './recipe/recipe.js';
export type {
  BendingRecipe,
  BreakRecipe,
  HardeningRecipe,
  ReductionRecipe,
  ResultKey,
  Section,
  SlopeBounds,
  SlopeRecipe,
  TestKind,
  ToeRecipe,
  TraceRecipe,
} from './recipe/recipe.js';
export type { SpecimenDimensions } from './recipe/specimen-dimensions.js';
export { reduceCurve } from './reduce-curve.js';
export { roundToSignificant, roundToStep, roundWithUncertainty } from './rounding/round-decimal.js';
export { reported } from './rounding/reported.js';
export type { Reporting } from './rounding/reported.js';
export type { TieRule } from './rounding/round-decimal.js';
export { testNormality } from './statistics/anderson-darling.js';
export { controlChart } from './statistics/control-chart.js';
export type { ChartSignal, ControlChart } from './statistics/control-chart.js';
export { describeSample, lagOneCorrelation } from './statistics/describe-sample.js';
export { fitLine } from './statistics/fit-line.js';
export type { LineFit } from './statistics/fit-line.js';
export { grubbsCritical, testGrubbs } from './statistics/grubbs.js';
export type { GrubbsOutcome, GrubbsSide } from './statistics/grubbs.js';
export { noncentralTCdf } from './statistics/noncentral-t.js';
export { normalCdf, normalQuantile } from './statistics/normal.js';
export type { SampleFigures } from './statistics/statistics-types.js';
export { studentCdf, studentQuantile } from './statistics/student.js';
export { toleranceBound, toleranceFactor } from './statistics/tolerance-bound.js';
export type { ToleranceBound } from './statistics/tolerance-bound.js';
export { repeatabilityOf, uncertaintyOfResult } from './uncertainty/budget-of-result.js';
export type { ResultUncertainty } from './uncertainty/budget-of-result.js';
export type { DoubtSources, RelativeDoubt } from './uncertainty/doubt-sources.js';
export { exponentsOf } from './uncertainty/exponents-of.js';
export type { Exponents, ResultModel } from './uncertainty/exponents-of.js';
export { buildBudget } from './uncertainty/build-budget.js';
export { stateConformity } from './uncertainty/state-conformity.js';
export type { ConformityStatement, Specification, ValueVerdict, Verdict } from './uncertainty/state-conformity.js';
export type {
  BudgetLine,
  Coverage,
  DoubtKind,
  UncertaintyBudget,
  UncertaintyComponent,
} from './uncertainty/uncertainty-types.js';
export { decodeWindows1252 } from './curve/windows-1252.js';
