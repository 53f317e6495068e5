import { useEffect, useState } from 'react';
import type { RefObject } from 'react';
import type { PlanView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { stopAt, stopsOf } from './board-stops.js';
import { stopWords } from './board-words.js';
import styles from './board.module.css';

/**
 * The whole of what a box on the board says, while the pointer or the keyboard is on it: most boxes are too narrow for their
 * words. A screen reader has them from the box itself.
 */
export function LineBelow({ scroller, plan }: { scroller: RefObject<HTMLDivElement | null>; plan: PlanView }) {
  const moments = useMoments();
  const id = usePointedAt(scroller);
  const said = plan.lanes.flatMap((lane) =>
    stopsOf(lane)
      .filter((stop) => stop.id === id)
      .map((stop) => `${lane.frame.tag}: ${stopWords(stop, moments)}`),
  );
  return (
    <p className={styles.lineBelow} aria-hidden="true">
      {said[0]}
    </p>
  );
}

/** The id of the box under the pointer, else of the one that has the focus. */
function usePointedAt(scroller: RefObject<HTMLDivElement | null>): string | null {
  const [pointed, setPointed] = useState<string | null>(null);
  const [focused, setFocused] = useState<string | null>(null);
  useEffect(() => {
    const board = scroller.current;
    if (!board) return;
    const over = ({ target }: Event) => setPointed(stopAt(target));
    const out = () => setPointed(null);
    const enter = ({ target }: Event) => setFocused(stopAt(target));
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
