import type { KeyboardEvent } from 'react';
import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import type { BookingView, PlanView } from '#libs/contract/src/index.js';
import { SNAP_MS, snap } from './board-scale.js';
import { elementId, stopsOf } from './board-stops.js';
import type { Stop } from './board-stops.js';
import { isMovable } from './use-held.js';
import type { Held } from './use-held.js';

interface KeySetting {
  plan: PlanView;
  held: Held | null;
  setHeld: (held: Held | null) => void;
  setDown: () => void;
  focused: string | null;
  enabled: boolean;
  onChoose: (booking: BookingView) => void;
}

/** The keys of the board: with nothing held they go from box to box, else they move what is held. */
export function useBoardKeys({ plan, held, setHeld, setDown, focused, enabled, onChoose }: KeySetting) {
  return (event: KeyboardEvent<HTMLElement>) => {
    const place = findStop(plan, focused);
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
  stop: Stop;
}

function findStop(plan: PlanView, id: string | null): Place | null {
  for (const [lane, each] of plan.lanes.entries()) {
    const stops = stopsOf(each);
    const index = stops.findIndex((stop) => stop.id === id);
    const stop = stops[index];
    if (stop) return { lane, index, stop };
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
  const { lane, index, stop } = place;
  const { booking } = stop;
  const go = (to: Stop | undefined) => to && document.getElementById(elementId(to.id))?.focus();
  const beside = (step: number) => stopsOf(plan.lanes[lane]!)[index + step];
  if (event.key === 'ArrowLeft') go(beside(-1));
  else if (event.key === 'ArrowRight') go(beside(1));
  else if (event.key === 'ArrowUp') go(nearest(plan, lane, -1, stop));
  else if (event.key === 'ArrowDown') go(nearest(plan, lane, 1, stop));
  else if (event.key === 'Enter') {
    if (booking) onChoose(booking);
  } else if (event.key === ' ') {
    if (enabled && booking && isMovable(booking)) setHeld({ booking, lane, startMs: stop.startMs, by: 'keys' });
  } else return false;
  return true;
}

function nearest(plan: PlanView, from: number, step: number, { startMs }: Stop): Stop | undefined {
  const distance = (stop: Stop) => Math.abs(stop.startMs - startMs);
  for (let lane = from + step; lane >= 0 && lane < plan.lanes.length; lane += step) {
    const found = stopsOf(plan.lanes[lane]!).sort((a, b) => distance(a) - distance(b))[0];
    if (found) return found;
  }
  return undefined;
}
