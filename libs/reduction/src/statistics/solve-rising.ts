/** Nothing is gained below the last bits of a double. */
const LAST_BITS = 2 ** -52;
const MOST_ROUNDS = 200;

/**
 * The place where a rising function meets a level, to the last digits of a double (Brent 1973, "Algorithms for
 * Minimization without Derivatives", chapter 4).
 *
 * @param low, high any bracket to start with; it is widened until it holds the level
 */
export function solveRising(f: (x: number) => number, level: number, low: number, high: number): number {
  const off = (x: number) => f(x) - level;
  const [from, to] = widened(off, low, high);
  let [a, b] = [from, to];
  let [offA, offB] = [off(a), off(b)];
  let [c, offC] = [a, offA];
  let [step, before] = [b - a, b - a];
  for (let round = 0; round < MOST_ROUNDS && offB !== 0; round++) {
    if (offB > 0 === offC > 0) [c, offC, step, before] = [a, offA, b - a, b - a];
    if (Math.abs(offC) < Math.abs(offB)) [a, b, c, offA, offB, offC] = [b, c, b, offB, offC, offB];
    const least = 2 * LAST_BITS * Math.abs(b) + Number.MIN_VALUE;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least) break;
    const guess =
      Math.abs(before) > least && Math.abs(offA) > Math.abs(offB) ? interpolated(a, b, c, offA, offB, offC) : half;
    const isGood = guess * half > 0 && Math.abs(guess) < Math.min(1.5 * Math.abs(half), Math.abs(before) / 2);
    [before, step] = isGood ? [step, guess] : [half, half];
    [a, offA] = [b, offB];
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    offB = off(b);
  }
  return b;
}

function widened(off: (x: number) => number, low: number, high: number): [number, number] {
  let [from, to] = [low, high];
  for (let round = 0; round < 60 && off(from) > 0; round++) from -= 2 * (to - from);
  for (let round = 0; round < 60 && off(to) < 0; round++) to += 2 * (to - from);
  return [from, to];
}

/** Step from b by inverse quadratic interpolation, or by the secant where only two places are known. */
function interpolated(a: number, b: number, c: number, offA: number, offB: number, offC: number): number {
  const s = offB / offA;
  if (a === c) return ((b - c) * s) / (1 - s);
  const q = offA / offC;
  const r = offB / offC;
  const up = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -up / ((q - 1) * (r - 1) * (s - 1));
}
