import { FORCE_CLASSES } from './limits/force-classes.js';
import { extensionClassesOf } from './limits/extension-classes.js';
import { allowedExtension } from './extension/allowed-extension.js';
import type { ExtensionClass, ExtensionStandard } from './limits/extension-classes.js';

/**
 * Whether a force class of ISO 7500-1 is at least as good as another; an unknown class is as good as none.
 */
export function forceClassMeets(found: string, needed: string): boolean {
  const rankOf = (name: string) => FORCE_CLASSES.findIndex(({ className }) => className === name);
  return rankOf(found) >= 0 && rankOf(found) <= rankOf(needed);
}

export interface ExtensionClassName {
  standard: ExtensionStandard;
  className: string;
}

/** Where an extensometer is used: gauge length in mm, and the strains (fraction, at least 0) that are read. */
export interface ExtensionUse {
  gaugeLengthMm: number;
  strainFrom: number;
  strainTo: number;
}

/**
 * Whether an extensometer's class allows nowhere more error than another class does, of the same or the other standard, over
 * the strains that are read. Compared are bias and resolution as ISO 9513 and ASTM E83 limit them; an unknown class is as
 * good as none.
 *
 * Both limits are a level that turns into a slope, so that it is enough to compare at the two ends and where one turns.
 */
export function extensionClassMeets(found: ExtensionClassName, needed: ExtensionClassName, use: ExtensionUse): boolean {
  const [has, needs] = [classNamed(found), classNamed(needed)];
  if (!has || !needs || has.gaugeLengthPct > needs.gaugeLengthPct) return false;
  return pointsOf(has, needs, use).every((extensionMm) => {
    const [one, other] = [has, needs].map((limits) => allowedExtension(limits, extensionMm, use.gaugeLengthMm));
    return one!.biasMm <= other!.biasMm && one!.resolutionMm <= other!.resolutionMm;
  });
}

function classNamed({ standard, className }: ExtensionClassName): ExtensionClass | undefined {
  return extensionClassesOf(standard).find((one) => one.className === className);
}

/** Extensions in mm at which the limits are compared. */
function pointsOf(
  has: ExtensionClass,
  needs: ExtensionClass,
  { gaugeLengthMm, strainFrom, strainTo }: ExtensionUse,
): number[] {
  const [from, to] = [strainFrom * gaugeLengthMm, strainTo * gaugeLengthMm];
  const turns = [has, needs].flatMap((limits) => {
    const level = allowedExtension(limits, 0, gaugeLengthMm);
    return [level.biasMm / (limits.biasPct / 100), level.resolutionMm / (limits.resolutionPct / 100)];
  });
  return [from, to, ...turns.filter((turn) => from < turn && turn < to)];
}
