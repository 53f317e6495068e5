import { instantAt } from '#libs/calendar/src/index.js';

/**
 * When a calibration was performed. Certificates state a day: it counts from noon in the lab, and on the day itself from now while noon
 * is still to come, so that the calibration holds at once.
 *
 * @param text an instant, or a day such as `2026-11-25`
 * @param nowMs ms
 * @returns ms
 */
export function performedMsOf(text: string, zone: string, nowMs: number): number {
  if (text.includes('T')) return Date.parse(text);
  const noon = instantAt(text, '12:00', zone);
  const isUnderWay = instantAt(text, '00:00', zone) <= nowMs;
  return isUnderWay ? Math.min(noon, nowMs) : noon;
}

/**
 * When the next calibration is due: at the instant given, or at noon in the lab of the day given.
 *
 * @returns ms
 */
export function dueMsOf(text: string, zone: string): number {
  return text.includes('T') ? Date.parse(text) : instantAt(text, '12:00', zone);
}
