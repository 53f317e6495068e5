import { readFileSync } from 'node:fs';

/** Ticks a second in which Linux counts (`getconf CLK_TCK`; 100 wherever we looked). */
const TICKS_PER_SECOND = 100;

/** Processor time that some processes take from now on; `unknown` where there is no /proc. */
export interface CpuShare {
  /** Percent of one core. */
  pct(): string;
  /** Milliseconds for each of so many requests: what a busy machine, unlike a time to answer, hardly changes. */
  msEach(requests: number): string;
}

export function cpuShare(pids: readonly number[]): CpuShare {
  const began = { ticks: ticksOf(pids), at: performance.now() };
  const takenMs = () => {
    const ticks = ticksOf(pids);
    return ticks === null || began.ticks === null ? null : ((ticks - began.ticks) * 1_000) / TICKS_PER_SECOND;
  };
  const shown = (ms: number | null, of: number, digits: number) =>
    ms === null ? 'unknown' : (ms / of).toFixed(digits);
  return {
    pct: () => shown(takenMs(), (performance.now() - began.at) / 100, 0),
    msEach: (requests) => shown(takenMs(), requests, 1),
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
