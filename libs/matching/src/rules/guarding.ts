import type { Needs } from '../ask/needs.js';
import type { MatchSettings } from '../ask/settings.js';
import type { Frame, Guard } from '../register/item.js';
import { CAPACITY_FIELDS, capacityOf } from './frame-capacity.js';
import { CAUTION, FAIL, PASS, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Parts } from './parts.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { limit } from './sentence.js';

/**
 * Fragments or stored energy need a guard fitted. The energy is the specimen's ½·F·δ and the frame's own F²/(2·k). A guard helps
 * against what is foreseen: the frame's own guide and the lab's risk assessment (ISO 12100) go before this rule.
 */
export const guarding = rule({
  code: 'guarding',
  source: '½·F·δ + F²/(2·k); ASTM C39 rupture warning (seen in a secondary copy); limits: common practice, no source',
  checks: [
    {
      sees: ['frame', 'guard'],
      frameFields: ['stiffnessNPerMm', ...CAPACITY_FIELDS, 'guardEnergyJ', 'guardInterlocked', 'columnClearanceMm'],
      judge,
    },
  ],
  sentences: {
    hazards: ({ need }) =>
      `Take care: ${need.replaceAll('-', ' ')}. Follow the guide of the frame and the lab's own rules.`,
    'no-guard': ({ first, need }) => `The break can throw fragments or let go ${need}; ${first} has no guard. Fit one.`,
    'guard-too-weak': limit(
      ({ need, has, first }) => `The break lets go ${need}; the guard of ${first} holds back ${has}`,
      'Fit a stronger guard.',
    ),
    'guard-not-interlocked': ({ first }) =>
      `The guard of ${first} is not interlocked: close it before every start and keep clear.`,
    'guard-too-wide': limit(
      ({ need, has, first, second }) => `${second} has ${need} between the columns; ${first} needs ${has}`,
      'Choose another guard.',
    ),
    'guard-too-narrow': limit(
      ({ need, has, first, second }) => `${second} has ${need} between the columns; ${first} fits up to ${has}`,
      'Choose another guard.',
    ),
  },
});

/** Energy let go when the specimen breaks at the high end of the band, J. */
export function releasedJ(needs: Needs, frame: Frame, settings: MatchSettings): number {
  if (needs.direction === 'torque') return 0;
  const stiffness = stiffnessWithTrain(frame, needs, settings);
  return needs.storedEnergy.value + needs.peakHigh.value ** 2 / (2 * stiffness) / 1000;
}

/** What hangs on a frame gives about as much as the frame itself, … (common practice, no source) */
const TRAIN_HALVES = 0.5;
/** … and both together at most so much at the frame's capacity (common practice, no source): soft is the safe side for energy. */
const MOST_GIVE_MM = 3;

/** N/mm. Where nobody has measured the frame, a soft one stands in. */
function stiffnessWithTrain({ details }: Frame, { direction }: Needs, settings: MatchSettings): number {
  return details.stiffnessNPerMm === null
    ? Math.min(settings.assumedStiffnessNPerMm, capacityOf(details, direction) / MOST_GIVE_MM)
    : TRAIN_HALVES * details.stiffnessNPerMm;
}

function needsGuard(energyJ: number, needs: Needs, settings: MatchSettings): boolean {
  const fromJ = needs.hazards.includes('fragments') ? settings.guardFragmentsFromJ : settings.guardFromJ;
  return needs.guardAlways || energyJ >= Math.min(fromJ, settings.guardFromJ);
}

function judge(
  { frame, guard }: Pick<Parts, 'frame' | 'guard'>,
  { needs, settings }: Context,
  report: Report,
): Outcome {
  const energyJ = releasedJ(needs, frame, settings);
  if (!needsGuard(energyJ, needs, settings)) {
    return needs.hazards.length > 0 ? report.say(CAUTION, 'hazards', frame, () => needs.hazards.join(', ')) : PASS;
  }
  const own = frame.details.guardEnergyJ;
  if (own === 0 && !guard) return report.say(FAIL, 'no-guard', frame, energyJ, 0, 'J');
  const best = guard && guard.details.energyJ > own ? guard : null;
  const guarded = best ?? frame;
  const interlocked = best ? best.details.interlocked : frame.details.guardInterlocked;
  return worst(
    report.atLeast('guard-too-weak', energyJ, best?.details.energyJ ?? own, 'J', guarded),
    best ? fits(best, frame, report) : PASS,
    interlocked ? PASS : report.say(CAUTION, 'guard-not-interlocked', guarded),
  );
}

function fits(guard: Guard, frame: Frame, report: Report): Outcome {
  const { columnClearanceMm } = frame.details;
  const { fitsClearanceMinMm, fitsClearanceMaxMm } = guard.details;
  const items = [guard, frame];
  return worst(
    report.notBelow('guard-too-wide', columnClearanceMm, fitsClearanceMinMm, 'mm', items),
    report.atLeast('guard-too-narrow', columnClearanceMm, fitsClearanceMaxMm, 'mm', items),
  );
}
