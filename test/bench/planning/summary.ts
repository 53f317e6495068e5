import type { Asked } from './arguments.js';
import type { PeerRun } from './peer/run-peer.js';
import type { Run } from './run-instance.js';

export interface Result extends Omit<Run, 'plan' | 'trace'> {
  name: string;
  best: number | null;
  proven: boolean;
  peer: PeerRun | null;
}

/** Percent above the best known value; null where that is 0 or unknown. */
export const gapPct = (value: number | null, best: number | null): number | null =>
  best && value !== null ? (value / best - 1) * 100 : null;

export function summaryOf(asked: Asked, results: readonly Result[]) {
  const known = results.filter(({ best }) => best !== null);
  const sum = (of: readonly number[]): number => of.reduce((total, one) => total + one, 0);
  const gaps = known.flatMap(({ value, best }) => gapPct(value, best) ?? []);
  const peers = known.flatMap(({ peer, best }) => gapPct(peer?.value ?? null, best) ?? []);
  const bestSum = sum(known.map(({ best }) => best!));
  return {
    set: asked.set,
    seconds: asked.seconds,
    seed: asked.seed,
    instances: results.length,
    atBestOrBelow: known.filter(({ value, best }) => value <= best!).length,
    meanGapPct: gaps.length > 0 ? sum(gaps) / gaps.length : null,
    sumGapPct: bestSum > 0 ? (sum(known.map(({ value }) => value)) / bestSum - 1) * 100 : null,
    peerAnswered: results.filter(({ peer }) => peer?.value != null).length,
    peerMeanGapPct: peers.length > 0 ? sum(peers) / peers.length : null,
  };
}

export function lineOf({ name, best, value, msToBest, rounds, evaluationsPerSecond, peer }: Result): string {
  const gap = gapPct(value, best);
  const other = peer ? `  peer ${peer.value ?? 'none'} (${peer.note})` : '';
  return `${name}  best ${best ?? '?'}  got ${value}  ${gap === null ? '' : `gap ${gap.toFixed(3)} %`}  at ${msToBest.toFixed(0)} ms  ${rounds} rounds  ${(evaluationsPerSecond / 1e6).toFixed(2)} M/s${other}`;
}
