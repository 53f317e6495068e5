/** Half-open span of time, [startMs, endMs), UTC instants in milliseconds. A window with endMs ≤ startMs is empty. */
export interface TimeWindow {
  startMs: number;
  endMs: number;
}

/** Half-open span in whole minutes from a horizon's origin, [startMin, endMin). */
export interface MinuteWindow {
  startMin: number;
  endMin: number;
}

export const MS_PER_SECOND = 1_000;
export const MS_PER_MINUTE = 60 * MS_PER_SECOND;
export const MS_PER_HOUR = 60 * MS_PER_MINUTE;
export const MS_PER_DAY = 24 * MS_PER_HOUR;
