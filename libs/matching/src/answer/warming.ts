import type { Warming } from './changeover.js';
import type { Rig } from '../register/lab.js';
import type { Needs } from '../ask/needs.js';
import type { Parts } from '../rules/parts.js';
import type { MatchSettings } from '../ask/settings.js';

/**
 * Ramp and soak of a chamber for a test, whole minutes; null without a chamber. A chamber that is at temperature already neither ramps
 * nor waits for itself, but a specimen still soaks.
 */
export function warmingOf(
  { chamber }: Pick<Parts, 'chamber'>,
  needs: Needs,
  rig: Rig,
  settings: MatchSettings,
): Warming | null {
  if (!chamber) return null;
  const { rampCPerMin, soakBaseMin, soakMinPerMm } = chamber.details;
  const fromC = rig.itemIds.includes(chamber.id) ? (rig.chamberC ?? settings.roomC) : settings.roomC;
  const toC = needs.temperature.value;
  return {
    chamberId: chamber.id,
    fromC,
    toC,
    rampMin: Math.ceil(Math.abs(toC - fromC) / rampCPerMin),
    soakMin: Math.ceil(soakBaseMin + soakMinPerMm * needs.specimen.bodyThicknessMm),
  };
}
