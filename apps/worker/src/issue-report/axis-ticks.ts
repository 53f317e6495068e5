/** The bounds of an axis and the figures written along it. */
export interface AxisTicks {
  from: number;
  to: number;
  ticks: string[];
}

const STEPS = [1, 2, 5, 10];

/** Four to ten round figures that span all values; an axis always shows zero when values come near it. */
export function axisTicks(values: readonly number[]): AxisTicks {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (!(low <= high)) return { from: 0, to: 1, ticks: ['0', '1'] };
  if (low > 0 && low < high * 0.5) low = 0;
  if (low === high) high = low + (Math.abs(low) || 1);
  const rough = (high - low) / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * STEPS.find((factor) => factor * power >= rough)!;
  const [first, last] = [Math.floor(low / step), Math.ceil(high / step)];
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => ((first + index) * step).toFixed(decimals));
  return { from: first * step, to: last * step, ticks };
}
