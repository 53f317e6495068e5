import { formatNumber } from '#libs/units/src/index.js';
import type { ShiftCheckReason } from '../interlocks/shift-check-words.js';
import type { BenchCheck } from './bench-check.js';

/** An item of the train by its place, as far as the checks look at it. */
export interface CheckedItem {
  role: string;
  item: { tag: string; kind: string; utilities: readonly string[] };
}

/** What the checks of a job follow from. */
export interface CheckFacts {
  needs: {
    ends: { by: 'grips' | 'platens' | 'fixture' };
    specimen: { spanMm: number | null };
    strain: { gaugeLength: { value: number } | null };
    /** Test temperature, °C. */
    temperature: { value: number };
    alignmentMaxBendingPct: number | null;
  };
  train: readonly CheckedItem[];
  frameTag: string;
  limitStops: { startOpeningMm: number; lowerStopMm: number; upperStopMm: number } | null;
  /** Whether the rules of matching demand a guard. */
  guardNeeded: boolean;
  /** How long each specimen soaks in the chamber of the train, min; null without a chamber. */
  soakMin: number | null;
  settings: { shiftCheckTolerancePct: number; warmUpMin: number };
  shiftCheck: ShiftCheckReason | null;
}

/** What has to be checked by one rule; null when it asks for nothing on this train. */
export type CheckRule = (facts: CheckFacts) => BenchCheck | BenchCheck[] | null;

/** Tags of the items in these places, as words. */
export function tagsOf(train: CheckFacts['train'], roles: readonly string[]): string {
  return train
    .filter(({ role }) => roles.includes(role))
    .map(({ item }) => item.tag)
    .join(', ');
}

export function mm(value: number): string {
  return `${formatNumber(value)} mm`;
}
