import { useCallback, useRef } from 'react';
import type { PointerEvent } from 'react';
import type { BookingView, PlanView } from '#libs/contract/src/index.js';
import { snap } from './board-scale.js';
import type { BoardScale } from './board-scale.js';
import { isMovable } from './use-held.js';
import type { Held } from './use-held.js';

const DRAG_PX = 5;

interface DragSetting {
  scale: BoardScale;
  plan: PlanView;
  held: Held | null;
  setHeld: (held: Held | null) => void;
  setDown: () => void;
  enabled: boolean;
}
/** Takes a job up with the pointer, carries it over the board and sets it down. */
export function useDrag({ scale, plan, held, setHeld, setDown, enabled }: DragSetting) {
  const grab = useRef<{ booking: BookingView; x: number; y: number; lane: number; startMs: number } | null>(null);
  return {
    down: useCallback(
      (event: PointerEvent, booking: BookingView, lane: number) => {
        if (!enabled || event.button !== 0 || !isMovable(booking)) return;
        grab.current = { booking, x: event.clientX, y: event.clientY, lane, startMs: Date.parse(booking.startsAt) };
      },
      [enabled],
    ),
    move: (event: PointerEvent) => {
      const from = grab.current;
      if (!from) return;
      if (!held && Math.hypot(event.clientX - from.x, event.clientY - from.y) < DRAG_PX) return;
      if (!held) event.currentTarget.setPointerCapture(event.pointerId);
      const moved = scale.msAt(scale.x(from.startMs) + event.clientX - from.x);
      setHeld({
        booking: from.booking,
        lane: laneAt(event, plan) ?? held?.lane ?? from.lane,
        startMs: snap(moved),
        by: 'pointer',
      });
    },
    up: () => {
      grab.current = null;
      if (held?.by === 'pointer') setDown();
    },
  };
}

function laneAt(event: PointerEvent, plan: PlanView): number | null {
  const under = document
    .elementsFromPoint(event.clientX, event.clientY)
    .find((element) => element instanceof HTMLElement && element.dataset['lane'] !== undefined);
  const index = under instanceof HTMLElement ? Number(under.dataset['lane']) : NaN;
  return index >= 0 && index < plan.lanes.length ? index : null;
}
