const MOST_SAMPLES = 2001;

/**
 * How far a column usually goes from one row to the next on rows [from, to]: the median step, or the mean step where most rows
 * repeat the one before (a coarse recorder). A long column is sampled evenly, so that the cost does not grow with the length.
 *
 * @returns 0 for fewer than two rows
 */
export function typicalStep(values: Float64Array, from: number, to: number): number {
  const stride = Math.max(1, Math.floor((to - from) / MOST_SAMPLES));
  const steps: number[] = [];
  for (let at = from + 1; at <= to; at += stride) steps.push(Math.abs(values[at]! - values[at - 1]!));
  if (steps.length === 0) return 0;
  const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1]! || mean;
}
