import type { Interlock } from './interlock.js';
import { SHIFT_CHECK_WORDS } from './shift-check-words.js';

const MIN_PER_HOUR = 60;

/** The cell was checked with a known load, and that check still holds. */
export const shiftCheckHolds: Interlock = {
  moves: ['start', 'resume'],
  judge({ shiftCheckReason: reason, shiftCheckValidMin, trainItems }) {
    if (reason === null) return null;
    const cell = trainItems.find(({ role }) => role === 'load-cell')?.item.tag ?? 'The cell';
    const longestHours = shiftCheckValidMin / MIN_PER_HOUR;
    return {
      code: 'bench/shift-check-needed',
      sentence: `${cell} needs a shift check: ${SHIFT_CHECK_WORDS[reason]}. It holds for one shift, ${longestHours} h at most. Check it with a known load.`,
      facts: { reason, longestHours },
    };
  },
};
