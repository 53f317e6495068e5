import type { ClassNeed } from './method.js';

/** Classes of a standard, best first. ISO 7500-1:2018, ASTM E4 (one grade), ISO 9513:2012, ASTM E83: see libs/metrology for their limits. */
const BEST_FIRST: Readonly<Record<string, readonly string[]>> = {
  'ISO 7500-1': ['0.5', '1', '2', '3'],
  'ASTM E4': ['1 %'],
  'ISO 9513': ['0.2', '0.5', '1', '2'],
  'ASTM E83': ['A', 'B-1', 'B-2', 'C', 'D', 'E'],
};

/**
 * A class of another standard whose limits lie within those asked for. ISO 7500-1 class 1 and better asks all that ASTM E4 does
 * (±1.0 %, repeatability 1.0 %, 200 × resolution) and more. ISO 9513 class 0.5 (1.5 µm or 0.5 %) lies within B-1 (0.0001 or 0.5 %)
 * from 15 mm gauge length on, class 1 (3 µm or 1 %) within C (0.001 or 1 %) from 3 mm on. The other way round nothing follows.
 */
const ALSO: readonly (readonly [ClassKey, ClassKey])[] = [
  [
    ['ISO 7500-1', '1'],
    ['ASTM E4', '1 %'],
  ],
  [
    ['ISO 9513', '0.5'],
    ['ASTM E83', 'B-1'],
  ],
  [
    ['ISO 9513', '1'],
    ['ASTM E83', 'C'],
  ],
];
type ClassKey = readonly [standard: string, className: string];

/** Whether a calibration's class is at least as good as the class that a method asks for. */
export function classMeets(
  held: Pick<ClassNeed, 'standard' | 'className'>,
  need: Pick<ClassNeed, 'standard' | 'className'>,
): boolean {
  if (held.standard === need.standard) return atLeast(held.standard, held.className, need.className);
  return ALSO.some(
    ([[from, fromClass], [to, toClass]]) =>
      held.standard === from &&
      need.standard === to &&
      atLeast(from, held.className, fromClass) &&
      atLeast(to, toClass, need.className),
  );
}

/** The next class down, or null when there is none. */
export function lowerClass(need: ClassNeed): ClassNeed | null {
  const [standard, className] = need.standard === 'ASTM E4' ? ['ISO 7500-1', '1'] : [need.standard, need.className];
  const classes = BEST_FIRST[standard] ?? [];
  const next = classes[classes.indexOf(className) + 1];
  return next && classes.includes(className)
    ? { standard, className: next, source: `${need.source}; lower class agreed` }
    : null;
}

/** Steps by which a held class is better than the one asked for; 0 when it just meets it or cannot be compared. */
export function classReserve(
  held: Pick<ClassNeed, 'standard' | 'className'>,
  need: Pick<ClassNeed, 'standard' | 'className'>,
): number {
  if (held.standard !== need.standard) return 0;
  const classes = BEST_FIRST[held.standard] ?? [];
  return Math.max(0, classes.indexOf(need.className) - classes.indexOf(held.className));
}

function atLeast(standard: string, held: string, need: string): boolean {
  const classes = BEST_FIRST[standard] ?? [];
  const [a, b] = [classes.indexOf(held), classes.indexOf(need)];
  return a >= 0 && b >= 0 && a <= b;
}
