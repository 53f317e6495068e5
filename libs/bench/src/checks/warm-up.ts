import { formatNumber } from '#libs/units/src/index.js';
import { tick } from './bench-check.js';
import type { CheckRule } from './check-facts.js';

/** The frame is warm and passed its own self-test. */
export const warmUp: CheckRule = ({ frameTag, settings }) =>
  tick(
    'warm-up',
    'Frame warmed up, self-test passed',
    `${frameTag} on for ${formatNumber(settings.warmUpMin)} min or more, and its own self-test without a fault.`,
  );
