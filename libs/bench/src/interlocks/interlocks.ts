import type { Finding } from '../finding.js';
import type { AtFrame } from './at-frame.js';
import { authorised } from './authorised.js';
import { checksTicked } from './checks-ticked.js';
import type { GuardedMove, Interlock } from './interlock.js';
import { linksConfirmed } from './links-confirmed.js';
import { resultsThere } from './results-there.js';
import { shiftCheckHolds } from './shift-check-holds.js';
import { specimensSettled } from './specimens-settled.js';
import { trainFit } from './train-fit.js';

/** Every interlock, in the order in which people are told of them. */
const INTERLOCKS: readonly Interlock[] = [
  authorised,
  linksConfirmed,
  trainFit,
  shiftCheckHolds,
  checksTicked,
  specimensSettled,
  resultsThere,
];

/** All that keeps a move from happening now; an empty list lets it happen. */
export function findingsAt(move: GuardedMove, at: AtFrame): Finding[] {
  return INTERLOCKS.filter(({ moves }) => moves.includes(move)).flatMap(({ judge }) => judge(at) ?? []);
}
