import type { KeyboardEvent } from 'react';
import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import type { BookingView, PlanView } from '#libs/contract/src/index.js';
import { SNAP_MS, snap } from './board-scale.js';
import { isMovable } from './use-held.js';
import type { Held } from './use-held.js';

interface KeySetting {
  plan: PlanView;
  held: Held | null;
  setHeld: (held: Held | null) => void;
  setDown: () => void;
  focused: string | null;
  setFocused: (id: string) => void;
  enabled: boolean;
  onChoose: (booking: BookingView) => void;
}

/** The keys of the board: with nothing held they go from job to job, else they move what is held. */
export function useBoardKeys({ plan, held, setHeld, setDown, focused, enabled, onChoose }: KeySetting) {
  return (event: KeyboardEvent<HTMLElement>) => {
    const place = findBooking(plan, focused);
    if (!place) return;
    const act = held
      ? heldKey(event, held, plan, setHeld, setDown)
      : freeKey(event, place, plan, { enabled, onChoose, setHeld });
    if (act) event.preventDefault();
  };
}

interface Place {
  lane: number;
  index: number;
  booking: BookingView;
}

function findBooking(plan: PlanView, id: string | null): Place | null {
  for (const [lane, { bookings }] of plan.lanes.entries()) {
    const index = bookings.findIndex((booking) => booking.id === id);
    const booking = bookings[index];
    if (booking) return { lane, index, booking };
  }
  return null;
}

function heldKey(
  event: KeyboardEvent,
  held: Held,
  plan: PlanView,
  setHeld: (held: Held | null) => void,
  setDown: () => void,
): boolean {
  const step = event.shiftKey ? 4 * MS_PER_HOUR : SNAP_MS;
  const shift = (minutesMs: number, lanes: number) =>
    setHeld({
      ...held,
      startMs: snap(held.startMs + minutesMs),
      lane: Math.min(plan.lanes.length - 1, Math.max(0, held.lane + lanes)),
    });
  if (event.key === 'ArrowLeft') shift(-step, 0);
  else if (event.key === 'ArrowRight') shift(step, 0);
  else if (event.key === 'ArrowUp') shift(0, -1);
  else if (event.key === 'ArrowDown') shift(0, 1);
  else if (event.key === 'Enter' || event.key === ' ') setDown();
  else if (event.key === 'Escape') setHeld(null);
  else return false;
  return true;
}

interface FreeActs {
  enabled: boolean;
  onChoose: (booking: BookingView) => void;
  setHeld: (held: Held | null) => void;
}

function freeKey(
  event: KeyboardEvent,
  place: Place,
  plan: PlanView,
  { enabled, onChoose, setHeld }: FreeActs,
): boolean {
  const { lane, index, booking } = place;
  const go = (to: BookingView | undefined) => to && document.getElementById(`booking-${to.id}`)?.focus();
  if (event.key === 'ArrowLeft') go(plan.lanes[lane]?.bookings[index - 1]);
  else if (event.key === 'ArrowRight') go(plan.lanes[lane]?.bookings[index + 1]);
  else if (event.key === 'ArrowUp') go(nearest(plan, lane, -1, booking));
  else if (event.key === 'ArrowDown') go(nearest(plan, lane, 1, booking));
  else if (event.key === 'Enter') onChoose(booking);
  else if (event.key === ' ') {
    if (enabled && isMovable(booking)) setHeld({ booking, lane, startMs: Date.parse(booking.startsAt), by: 'keys' });
  } else return false;
  return true;
}

function nearest(plan: PlanView, from: number, step: number, to: BookingView): BookingView | undefined {
  for (let lane = from + step; lane >= 0 && lane < plan.lanes.length; lane += step) {
    const found = [...(plan.lanes[lane]?.bookings ?? [])].sort(
      (a, b) =>
        Math.abs(Date.parse(a.startsAt) - Date.parse(to.startsAt)) -
        Math.abs(Date.parse(b.startsAt) - Date.parse(to.startsAt)),
    )[0];
    if (found) return found;
  }
  return undefined;
}
