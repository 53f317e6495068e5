import { formatNumber } from '#libs/units/src/index.js';
import { SHIFT_CHECK_WORDS } from '../interlocks/shift-check-words.js';
import { tagsOf } from './check-facts.js';
import type { CheckRule } from './check-facts.js';

/** The cell is checked with a known load, unless the last check holds. */
export const shiftCheck: CheckRule = ({ train, frameTag, settings, shiftCheck: reason }) => {
  const cell = tagsOf(train, ['load-cell']);
  const why = reason ? `Needed: ${SHIFT_CHECK_WORDS[reason]}.` : 'The last one holds.';
  const detail = `A known load on ${cell} at ${frameTag}; the reading may be off by ${formatNumber(settings.shiftCheckTolerancePct)} % at most. ${why} A cell that fails is out of use at once.`;
  return { key: 'shift-check', label: 'Shift check of the cell', detail, required: true, kind: 'shift-check' };
};
