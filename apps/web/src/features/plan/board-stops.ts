import type { BookingView, LaneView } from '#libs/contract/src/index.js';

const PREFIX = 'stop-';

/** A time in which a frame is down. */
export type DownTime = LaneView['down'][number];

/** A box of a lane on which the keyboard can stop: a job, or a time in which its frame is down. */
export type Stop =
  | { id: string; startMs: number; booking: BookingView; down: null }
  | { id: string; startMs: number; booking: null; down: DownTime };

/** The boxes of a lane, as they follow each other in time. */
export function stopsOf({ bookings, down }: LaneView): Stop[] {
  return [
    ...bookings.map((booking): Stop => ({ ...placeOf(booking), booking, down: null })),
    ...down.map((each): Stop => ({ ...placeOf(each), booking: null, down: each })),
  ].sort((a, b) => a.startMs - b.startMs);
}

function placeOf({ id, startsAt }: { id: string; startsAt: string }) {
  return { id, startMs: Date.parse(startsAt) };
}

/** The id of the element that shows a box of the board. */
export function elementId(id: string): string {
  return `${PREFIX}${id}`;
}

/** The id of the box that an element is within. */
export function stopAt(target: EventTarget | null): string | null {
  const box = target instanceof Element ? target.closest(`[id^="${PREFIX}"]`) : null;
  return box ? box.id.slice(PREFIX.length) : null;
}
