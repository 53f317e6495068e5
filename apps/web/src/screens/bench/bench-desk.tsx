/** Bench */
export function BenchDesk() {
  return null;
}
