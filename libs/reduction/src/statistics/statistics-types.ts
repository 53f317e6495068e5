/** Figures of one sample; every value in the unit of the sample, `cvPct` in percent. Null where n is too small or the mean is zero. */
export interface SampleFigures {
  readonly n: number;
  readonly mean: number;
  readonly sd: number | null;
  readonly cvPct: number | null;
  readonly median: number;
  readonly min: number;
  readonly max: number;
  /** Two-sided confidence interval of the mean. */
  readonly meanInterval: { readonly from: number; readonly to: number; readonly confidence: number } | null;
}
