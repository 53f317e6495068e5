import { useEffect, useState } from 'react';
import type { RefObject } from 'react';
import type { PlanView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { describe } from './booking-box.js';
import styles from './board.module.css';

/**
 * The whole of what a box on the board says, while the pointer or the keyboard is on it: most boxes are too narrow for their
 * words. A screen reader has them from the box itself.
 */
export function LineBelow({ scroller, plan }: { scroller: RefObject<HTMLDivElement | null>; plan: PlanView }) {
  const moments = useMoments();
  const id = usePointedAt(scroller);
  const lane = plan.lanes.find(({ bookings }) => bookings.some((booking) => booking.id === id));
  const booking = lane?.bookings.find((each) => each.id === id);
  return (
    <p className={styles.lineBelow} aria-hidden="true">
      {booking && `${lane!.frame.tag}: ${describe(booking, moments)}`}
    </p>
  );
}

/** The id of the booking under the pointer, else of the one that has the focus. */
function usePointedAt(scroller: RefObject<HTMLDivElement | null>): string | null {
  const [pointed, setPointed] = useState<string | null>(null);
  const [focused, setFocused] = useState<string | null>(null);
  useEffect(() => {
    const board = scroller.current;
    if (!board) return;
    const over = ({ target }: Event) => setPointed(bookingAt(target));
    const out = () => setPointed(null);
    const enter = ({ target }: Event) => setFocused(bookingAt(target));
    const leave = () => setFocused(null);
    board.addEventListener('pointerover', over);
    board.addEventListener('pointerleave', out);
    board.addEventListener('focusin', enter);
    board.addEventListener('focusout', leave);
    return () => {
      board.removeEventListener('pointerover', over);
      board.removeEventListener('pointerleave', out);
      board.removeEventListener('focusin', enter);
      board.removeEventListener('focusout', leave);
    };
  }, [scroller]);
  return pointed ?? focused;
}

function bookingAt(target: EventTarget | null): string | null {
  const box = target instanceof Element ? target.closest('[id^="booking-"]') : null;
  return box ? box.id.slice('booking-'.length) : null;
}
