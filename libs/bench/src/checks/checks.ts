import type { BenchCheck } from './bench-check.js';
import type { CheckFacts, CheckRule } from './check-facts.js';
import { shiftCheck } from './shift-check.js';
import { limitStops } from './limit-stops.js';
import { guard } from './guard.js';
import { emergencyStop } from './emergency-stop.js';
import { warmUp } from './warm-up.js';
import { channels } from './channels.js';
import { supplies } from './supplies.js';
import { ends } from './ends.js';
import { extensometer } from './extensometer.js';
import { temperature } from './temperature.js';
import { zero } from './zero.js';
import { alignment } from './alignment.js';

/** Every check before the first specimen, in working order. */
const CHECKS: readonly CheckRule[] = [
  shiftCheck,
  limitStops,
  guard,
  emergencyStop,
  warmUp,
  channels,
  supplies,
  ends,
  extensometer,
  temperature,
  zero,
  alignment,
];

/** The checks that this job asks for, in working order. */
export function checksFor(facts: CheckFacts): BenchCheck[] {
  return CHECKS.flatMap((check) => check(facts) ?? []);
}
