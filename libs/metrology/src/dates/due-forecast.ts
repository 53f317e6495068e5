import { MS_PER_DAY, covers } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '#libs/calendar/src/index.js';
import { DUE_SOON_DAYS, itemCalibrationStatus } from './calibration-status.js';
import { windowsInForce } from './windows-in-force.js';
import type { CalibrationStatusName, ItemFacts } from './calibration-status.js';

export interface ForecastItem extends ItemFacts {
  id: string;
}

/** A planned job: it takes its items over [startMs, endMs), UTC ms. */
export interface ForecastJob {
  id: string;
  itemIds: readonly string[];
  startMs: number;
  endMs: number;
}

export interface DueForecast {
  itemId: string;
  status: CalibrationStatusName;
  /** When it falls due, or fell due; null when it was never in force. */
  dueMs: number | null;
  /** Planned jobs that it would stop, because no calibration is in force over the whole of them; by start. */
  stops: string[];
}

/**
 * What is overdue, was never calibrated, or falls due within so many days, and which planned jobs that would stop.
 * The most urgent comes first: never calibrated, then by due date. Items that are out of use or need none are left out.
 *
 * @param days horizon, at least 0; an item due exactly at its end is listed
 * @param dueSoonDays a calibration that has at most so many days to go is `due-soon`
 */
export function dueForecast(
  items: readonly ForecastItem[],
  jobs: readonly ForecastJob[],
  nowMs: number,
  days: number,
  dueSoonDays = DUE_SOON_DAYS,
): DueForecast[] {
  const horizonMs = nowMs + days * MS_PER_DAY;
  return items
    .map((item) => ({ item, status: itemCalibrationStatus(item, nowMs, dueSoonDays) }))
    .filter(({ status }) => status.name !== 'out-of-use' && status.name !== 'not-needed')
    .filter(({ status }) => status.dueMs === null || status.dueMs <= horizonMs)
    .map(({ item, status }) => ({
      itemId: item.id,
      status: status.name,
      dueMs: status.dueMs,
      stops: stoppedBy(item, jobs),
    }))
    .sort((a, b) => (a.dueMs ?? -Infinity) - (b.dueMs ?? -Infinity) || a.itemId.localeCompare(b.itemId));
}

function stoppedBy(item: ForecastItem, jobs: readonly ForecastJob[]): string[] {
  const inForce = item.directions.map(windowsInForce);
  return jobs
    .filter((job) => job.itemIds.includes(item.id) && !isCovered(job, inForce))
    .sort((a, b) => a.startMs - b.startMs)
    .map(({ id }) => id);
}

/** Every direction is in calibration over the whole of the job; the job is not known by direction. */
function isCovered(job: ForecastJob, inForce: readonly (readonly TimeWindow[])[]): boolean {
  return inForce.length > 0 && inForce.every((windows) => covers(windows, job));
}
