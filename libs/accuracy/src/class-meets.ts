import { allowedExtension } from './allowed-extension.js';
import { EXTENSION_CLASSES, extensionClassesOf, isExtensionStandard } from './extension-classes.js';
import type { ExtensionClass } from './extension-classes.js';
import { FORCE_GRADES } from './force-classes.js';
import type { ForceGrade } from './force-classes.js';

/** A class in the words of its standard, e.g. `ISO 9513` class `0.5`, `ASTM E83` class `B-2`. */
export interface ClassName {
  standard: string;
  className: string;
}

/** Where an extensometer is used: the length that strains are referred to, in mm, and the strains (fraction, at least 0) that are read. */
export interface ExtensionUse {
  gaugeLengthMm: number;
  strainFrom: number;
  strainTo: number;
}

/**
 * Whether a class that an instrument holds allows nowhere more error than the class that is asked for, of the same or another standard.
 * An unknown class is as good as none, and a class of force never meets one of extension.
 *
 * @param use where the extensometer is used; null leaves only classes of the same standard to compare, and is right for forces
 */
export function classMeets(held: ClassName, needed: ClassName, use: ExtensionUse | null): boolean {
  return isExtensionStandard(needed.standard)
    ? extensionClassMeets(held, needed, use)
    : forceClassMeets(forceGrade(held), forceGrade(needed));
}

/** Every class that meets the one asked for, by its standard: for callers that compare with many calibrations. */
export function classesThatMeet(needed: ClassName, use: ExtensionUse | null): Readonly<Record<string, string[]>> {
  const meeting: Record<string, string[]> = {};
  for (const held of [...FORCE_GRADES, ...EXTENSION_CLASSES])
    if (classMeets(held, needed, use)) (meeting[held.standard] ??= []).push(held.className);
  return meeting;
}

/**
 * The class that may be agreed instead when the one asked for is not to be had; null when there is none. Below the one grade of ASTM E4
 * come the classes of ISO 7500-1 below class 1.
 */
export function lowerClass({ standard, className }: ClassName): ClassName | null {
  const from = standard === 'ASTM E4' ? { standard: 'ISO 7500-1', className: '1' } : { standard, className };
  const classes = classesOf(from.standard);
  const place = classes.indexOf(from.className);
  const next = place === -1 ? undefined : classes[place + 1];
  return next === undefined ? null : { standard: from.standard, className: next };
}

/** Steps by which a held class is better than the one asked for, at least 0; 0 where the two belong to different standards. */
export function classReserve(held: ClassName, needed: ClassName): number {
  if (held.standard !== needed.standard) return 0;
  const classes = classesOf(held.standard);
  return Math.max(0, classes.indexOf(needed.className) - classes.indexOf(held.className));
}

/** The classes of a standard, the best first. */
function classesOf(standard: string): string[] {
  return [...FORCE_GRADES, ...EXTENSION_CLASSES]
    .filter((each) => each.standard === standard)
    .map(({ className }) => className);
}

function forceGrade({ standard, className }: ClassName): ForceGrade | undefined {
  return FORCE_GRADES.find((one) => one.standard === standard && one.className === className);
}

/** A limit that only the class asked for sets is one that the held class does not promise. */
function forceClassMeets(has: ForceGrade | undefined, needs: ForceGrade | undefined): boolean {
  if (!has || !needs || has.lowestInResolutions < needs.lowestInResolutions) return false;
  return (['indicationPct', 'repeatabilityPct', 'reversibilityPct', 'zeroPct'] as const).every(
    (limit) => (has[limit] ?? Infinity) <= (needs[limit] ?? Infinity),
  );
}

/**
 * Compared are the error of the gauge length, and bias and resolution as ISO 9513 and ASTM E83 limit them over the strains that are read.
 * Both limits are a level that turns into a slope, so that it is enough to compare at the two ends and where one turns.
 */
function extensionClassMeets(held: ClassName, needed: ClassName, use: ExtensionUse | null): boolean {
  const [has, needs] = [extensionClass(held), extensionClass(needed)];
  if (!has || !needs || has.gaugeLengthPct > needs.gaugeLengthPct) return false;
  if (has.standard === needs.standard) return has.biasPct <= needs.biasPct && isNoWorseAtRest(has, needs);
  if (!use) return false;
  return pointsOf(has, needs, use).every((extensionMm) => {
    const [one, other] = [has, needs].map((limits) => allowedExtension(limits, extensionMm, use.gaugeLengthMm));
    return one!.biasMm <= other!.biasMm && one!.resolutionMm <= other!.resolutionMm;
  });
}

function extensionClass({ standard, className }: ClassName): ExtensionClass | undefined {
  if (!isExtensionStandard(standard)) return undefined;
  return extensionClassesOf(standard).find((one) => one.className === className);
}

/** The absolute limits of one standard are in one unit, so that they compare whatever the gauge length. */
function isNoWorseAtRest(has: ExtensionClass, needs: ExtensionClass): boolean {
  return (has.biasMm ?? has.biasStrain!) <= (needs.biasMm ?? needs.biasStrain!);
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
