/** Rows that keep the picture: the first and the last, and of each stretch between the lowest and the highest. */
export function rowsToDraw(y: Float64Array, mostPoints: number): number[] {
  if (y.length <= mostPoints) return Array.from(y, (_, row) => row);
  const stretches = Math.max(1, (mostPoints - 2) >> 1);
  const rows = new Set([0, y.length - 1]);
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.floor((stretch * y.length) / stretches);
    const to = Math.floor(((stretch + 1) * y.length) / stretches);
    const [lowest, highest] = extremesBetween(y, from, to);
    rows.add(lowest).add(highest);
  }
  return [...rows].sort((a, b) => a - b);
}

function extremesBetween(y: Float64Array, from: number, to: number): [number, number] {
  let [lowest, highest] = [from, from];
  for (let row = from; row < to; row++) {
    if (y[row]! < y[lowest]!) lowest = row;
    if (y[row]! > y[highest]!) highest = row;
  }
  return [lowest, highest];
}
