import { readFileSync } from 'node:fs';

/** Ticks a second in which Linux counts (`getconf CLK_TCK`; 100 wherever we looked). */
const TICKS_PER_SECOND = 100;

/** How much processor time some processes take from now on. @returns percent of one core; `unknown` where there is no /proc */
export function cpuShare(pids: readonly number[]): { pct(): string } {
  const began = { ticks: ticksOf(pids), at: performance.now() };
  return {
    pct: () => {
      const ticks = ticksOf(pids);
      if (ticks === null || began.ticks === null) return 'unknown';
      return ((100_000 * (ticks - began.ticks)) / TICKS_PER_SECOND / (performance.now() - began.at)).toFixed(0);
    },
  };
}

/** User and system time: fields 14 and 15 of proc_pid_stat(5), counted after the name in brackets. */
function ticksOf(pids: readonly number[]): number | null {
  try {
    return pids.reduce((sum, pid) => {
      const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
      return sum + Number(fields[11]) + Number(fields[12]);
    }, 0);
  } catch {
    return null;
  }
}
