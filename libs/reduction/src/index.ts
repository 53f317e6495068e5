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
export { READER_LIMITS } from './curve/curve-reading.js';
export type { CurveReading, LineProblem, ProblemReason, ReaderLimits } from './curve/curve-reading.js';
export { checkDimensions } from './recipe/check-dimensions.js';
export { checkRecipe } from './recipe/check-recipe.js';
export { RESULT_KEYS, SECTIONS, TEST_KINDS } from './recipe/recipe.js';
export { reduceCurve } from './reduce-curve.js';
export { fitLine, fitThroughOrigin } from './statistics/fit-line.js';
export type { LineFit } from './statistics/fit-line.js';
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
export type {
  CurveAxes,
  Flag,
  FlagCode,
  MissingReason,
  MissingResult,
  ReducedResult,
  ReductionOutcome,
  ReductionRefusal,
  ResultPoint,
  SlopeLine,
} from './measures/reduction-outcome.js';
export type { SampleFigures } from './statistics/statistics-types.js';
export type {
  BudgetLine,
  Coverage,
  DoubtKind,
  UncertaintyBudget,
  UncertaintyComponent,
} from './uncertainty/uncertainty-types.js';
export { checkCurveFormat } from './curve/check-curve-format.js';
export { createCurveReader } from './curve/create-curve-reader.js';
export type { CurveReader, CurveReaderOptions } from './curve/create-curve-reader.js';
export { HEAD_BYTES, proposeFormat } from './curve/propose-format.js';
export { sayDoubt, sayProblem } from './curve/say-problem.js';
