import { tick } from './bench-check.js';
import type { CheckRule } from './check-facts.js';

/** The emergency stop was tried, and released on purpose. */
export const emergencyStop: CheckRule = () =>
  tick(
    'emergency-stop',
    'Emergency stop reachable, and released on purpose',
    'Reach it from where you stand, press it once, see that nothing moves, and release it by hand.',
  );
