import { MS_PER_DAY, MS_PER_HOUR } from '#libs/calendar/src/index.js';
import type { LaneView, PlanView } from '#libs/contract/src/index.js';
import type { Moments } from '../../ui/moments.js';

export const SNAP_MS = 15 * 60_000;

/** How many pixels one hour takes, by what the board shows at once. */
export const ZOOMS = [
  { key: 'day', label: '1 day', pxPerHour: 56 },
  { key: 'three', label: '3 days', pxPerHour: 22 },
  { key: 'week', label: 'a week', pxPerHour: 8 },
  { key: 'all', label: 'all', pxPerHour: 3 },
] as const;
export type Zoom = (typeof ZOOMS)[number];

/** Maps instants to pixels on the board. */
export interface BoardScale {
  fromMs: number;
  toMs: number;
  width: number;
  x: (at: string | number) => number;
  msAt: (px: number) => number;
}

export function scaleOf(plan: PlanView, zoom: Zoom, { startOfDay }: Moments): BoardScale {
  const fromMs = startOfDay(Date.parse(plan.horizon.from));
  const last = Math.max(
    ...plan.lanes.flatMap(({ bookings }) => bookings.map(({ endsAt }) => Date.parse(endsAt))),
    fromMs + 5 * MS_PER_DAY,
  );
  const toMs = Math.min(startOfDay(last, 2), Math.max(Date.parse(plan.horizon.to), fromMs + 5 * MS_PER_DAY));
  const perMs = zoom.pxPerHour / MS_PER_HOUR;
  return {
    fromMs,
    toMs,
    width: (toMs - fromMs) * perMs,
    x: (at) => ((typeof at === 'number' ? at : Date.parse(at)) - fromMs) * perMs,
    msAt: (px) => fromMs + px / perMs,
  };
}

/** Midnights of the lab on the board. */
export function daysOf({ fromMs, toMs }: BoardScale, { startOfDay }: Moments): number[] {
  const days: number[] = [];
  for (let day = startOfDay(fromMs); day < toMs; day = startOfDay(day, 1)) days.push(day);
  return days;
}

/** A time in which a frame is closed, ms. */
export interface ClosedTime {
  from: number;
  to: number;
}

/** When a lane is closed: what its open windows leave over. */
export function closedOf(lane: LaneView, { fromMs, toMs }: BoardScale): ClosedTime[] {
  const closed: ClosedTime[] = [];
  let at = fromMs;
  for (const { startsAt, endsAt } of [...lane.open].sort((a, b) => a.startsAt.localeCompare(b.startsAt))) {
    const start = Date.parse(startsAt);
    if (start > at) closed.push({ from: at, to: Math.min(start, toMs) });
    at = Math.max(at, Date.parse(endsAt));
  }
  if (at < toMs) closed.push({ from: at, to: toMs });
  return closed.filter(({ from, to }) => to > from);
}

export function snap(ms: number): number {
  return Math.round(ms / SNAP_MS) * SNAP_MS;
}
