/** What bounds a result: the load itself, what follows from a load, or the nature of the figure. */
export type FigureKind =
  | 'load'
  | 'stress'
  | 'slope'
  | 'flow-stress'
  | 'stiffness'
  | 'energy'
  | 'work-density'
  | 'travel'
  | 'strain'
  | 'elongation'
  | 'share'
  | 'other';

const KINDS: Readonly<Record<string, FigureKind>> = {
  'peak-load': 'load',
  'peak-stress': 'stress',
  'stress-at-break': 'stress',
  'stress-at-strain': 'stress',
  'offset-yield': 'stress',
  'upper-yield': 'stress',
  'lower-yield': 'stress',
  'mean-peel': 'stress',
  'least-peel': 'stress',
  'highest-peel': 'stress',
  'mean-tear-peaks': 'stress',
  'median-tear-peaks': 'stress',
  modulus: 'slope',
  'hardening-coefficient': 'flow-stress',
  'hardening-exponent': 'share',
  stiffness: 'stiffness',
  'energy-to-peak': 'energy',
  'energy-to-break': 'energy',
  'work-density-to-break': 'work-density',
  'travel-at-peak': 'travel',
  'strain-at-peak': 'strain',
  'strain-at-break': 'strain',
  'plastic-strain-at-peak': 'strain',
  'plastic-strain-at-break': 'strain',
  'yield-point-extension': 'elongation',
  'elongation-after-fracture': 'elongation',
  'reduction-of-area': 'share',
};

const UNITS_OF_LOAD: readonly string[] = ['N', 'N·m'];

/**
 * The kind of a result. A stress that is kept in N or N·m is a load: a component has no section to divide by.
 *
 * @param key may say at which strain: `stress-at-strain@0.1`
 * @param unit in which the result is kept
 */
export function figureKind(key: string, unit: string): FigureKind {
  const kind = KINDS[key.split('@')[0]!] ?? 'other';
  return kind === 'stress' && UNITS_OF_LOAD.includes(unit) ? 'load' : kind;
}
