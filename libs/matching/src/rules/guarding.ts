import type { Frame, Guard } from '../item.js';
import type { Needs } from '../needs.js';
import type { MatchSettings } from '../settings.js';
import { atLeast, notBelow, told, worst } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/**
 * Fragments or stored energy need a guard fitted. The energy is the specimen's ½·F·δ and the frame's own F²/(2·k). A guard helps
 * against what is foreseen: the frame's own guide and the lab's risk assessment (ISO 12100) go before this rule.
 */
export const guarding: Rule = {
  code: 'guarding',
  source: '½·F·δ + F²/(2·k); ASTM C39 rupture warning (seen in a secondary copy); limits: common practice, no source',
  checks: [
    {
      sees: ['frame', 'guard'],
      judge,
      passes: ({ frame }, { needs, settings }) => needs.hazards.length === 0 && !needsGuard(needs, frame, settings),
    },
  ],
};

/** Energy let go when the specimen breaks at the high end of the band, J. */
export function releasedJ(needs: Needs, frame: Frame, settings: MatchSettings): number {
  if (needs.direction === 'torque') return 0;
  const stiffness = frame.details.stiffnessNPerMm ?? settings.assumedStiffnessNPerMm;
  return needs.storedEnergy.value + needs.peakHigh.value ** 2 / (2 * stiffness) / 1000;
}

/** Whether anything asks for a guard. */
export function needsGuard(needs: Needs, frame: Frame, settings: MatchSettings): boolean {
  const fromJ = needs.hazards.includes('fragments') ? settings.guardFragmentsFromJ : settings.guardFromJ;
  return needs.guardAlways || releasedJ(needs, frame, settings) >= Math.min(fromJ, settings.guardFromJ);
}

function judge({ frame, guard }: { frame: Frame; guard: Guard | null }, { needs, settings }: Context): Finding | null {
  if (!needsGuard(needs, frame, settings)) {
    return needs.hazards.length > 0 ? told('caution', 'hazards', [frame.id], needs.hazards.join(', ')) : null;
  }
  const energyJ = releasedJ(needs, frame, settings);
  const own = frame.details.guardEnergyJ;
  if (own === 0 && !guard) return told('fail', 'no-guard', [frame.id], energyJ, 0, 'J');
  const best = guard && guard.details.energyJ > own ? guard : null;
  const items = best ? [best.id] : [frame.id];
  const interlocked = best ? best.details.interlocked : frame.details.guardInterlocked;
  return worst([
    atLeast('guard-too-weak', items, energyJ, best?.details.energyJ ?? own, 'J'),
    best ? fits(best, frame) : null,
    interlocked ? null : told('caution', 'guard-not-interlocked', items),
  ]);
}

function fits({ id, details }: Guard, frame: Frame): Finding | null {
  const { columnClearanceMm } = frame.details;
  return worst([
    notBelow('guard-too-wide', [id, frame.id], columnClearanceMm, details.fitsClearanceMinMm, 'mm'),
    atLeast('guard-too-narrow', [id, frame.id], columnClearanceMm, details.fitsClearanceMaxMm, 'mm'),
  ]);
}
