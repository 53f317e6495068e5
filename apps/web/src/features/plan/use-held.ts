import { useCallback, useEffect, useState } from 'react';
import type { BookingView, FitView, PlanView } from '#libs/contract/src/index.js';

/** A job while it is held over the board. */
export interface Held {
  booking: BookingView;
  lane: number;
  startMs: number;
  by: 'pointer' | 'keys';
}

/** Asks whether a job would fit at a start, lane by lane. */
export type AskFit = (jobId: string, startsAt: string) => Promise<FitView[]>;

/** By frame, whether the job that is held would fit there; null until it is answered. */
export type Fits = ReadonlyMap<string, FitView> | null;

const MOVABLE = ['waiting', 'ready', null];
const ASK_MS = 180;

interface Holding {
  held: Held | null;
  setHeld: (held: Held | null) => void;
  /** Moves the job to where it is held, if it fits there. */
  setDown: () => void;
  fits: Fits;
}

/** The job that is held over the board, and whether it would fit there. */
export function useHeld(
  plan: PlanView,
  askFit: AskFit | undefined,
  onMove: ((booking: BookingView, frameId: string, startsAt: string) => void) | undefined,
): Holding {
  const [held, setHeld] = useState<Held | null>(null);
  const fits = useFits(held, askFit);
  const setDown = useCallback(() => {
    if (!held) return;
    const lane = plan.lanes[held.lane];
    const fit = lane && fits?.get(lane.frame.id);
    if (lane && onMove && fit?.fits !== false)
      onMove(held.booking, lane.frame.id, new Date(held.startMs).toISOString());
    if (fit?.fits === false && held.by === 'keys') return;
    setHeld(null);
  }, [held, fits, plan, onMove]);
  return { held, setHeld, setDown, fits };
}

function useFits(held: Held | null, askFit: AskFit | undefined): Fits {
  const [fits, setFits] = useState<Fits>(null);
  const jobId = held?.booking.jobId ?? null;
  const startMs = held?.startMs ?? 0;
  useEffect(() => {
    setFits(null);
    if (!jobId || !askFit) return;
    let over = false;
    const timer = setTimeout(() => {
      askFit(jobId, new Date(startMs).toISOString())
        .then((answers) => !over && setFits(new Map(answers.map((fit) => [fit.frameId, fit]))))
        .catch(() => undefined);
    }, ASK_MS);
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [jobId, startMs, askFit]);
  return fits;
}

/** Only a job that has not begun can be moved. */
export function isMovable(booking: BookingView): boolean {
  return booking.kind === 'job' && MOVABLE.includes(booking.state);
}
