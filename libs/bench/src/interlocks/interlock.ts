import type { Finding } from '../finding.js';
import type { AtFrame } from './at-frame.js';

/** Moves that an interlock may keep from happening. */
export type GuardedMove = 'start' | 'resume' | 'finish';

/** Something that must hold at the moment of a move. It is looked at in the transaction of the move, and never waived. */
export interface Interlock {
  moves: readonly GuardedMove[];
  /** @returns what is in the way; null when nothing is */
  judge: (at: AtFrame) => Finding | null;
}
