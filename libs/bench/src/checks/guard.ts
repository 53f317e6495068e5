import { tick } from './bench-check.js';
import { tagsOf } from './check-facts.js';
import type { CheckRule } from './check-facts.js';

/** The guard is closed; required where the rules demand one, or where one was fitted. */
export const guard: CheckRule = ({ train, frameTag, guardNeeded }) => {
  const fitted = tagsOf(train, ['guard']);
  const which = fitted || `the guard of ${frameTag}`;
  return tick(
    'guard',
    'Guard in place',
    guardNeeded || fitted ? `Close ${which} before every start.` : 'Close the guard where the frame has one.',
    guardNeeded || fitted !== '',
  );
};
