import type { Quantity, Unit } from '#libs/units/src/index.js';

/** One field of an item, as forms, CSV columns and checks see it. The table is `ITEM_FIELDS`. */
export interface ItemField {
  /** Path in the item, e.g. `massKg`, `details.frameCoupling.sizeMm`. */
  path: string;
  label: string;
  /**
   * `rating-curve`: points { temperatureC, rating }; `channels`: { kind, count } each; `speed-limits`: { aboveForceN, speedMaxMmPerMin } each;
   * `numbers`: one or more; `choices`: any of `choices`.
   */
  type: 'text' | 'number' | 'flag' | 'choice' | 'choices' | 'numbers' | 'rating-curve' | 'channels' | 'speed-limits';
  quantity?: Quantity;
  /** Internal unit of value and bounds. */
  unit?: Unit;
  /** Stands behind a figure that is never converted, e.g. `%`; for people only. */
  fixedUnit?: string;
  /** Both bounds are allowed values. */
  min?: number;
  max?: number;
  choices?: readonly string[];
  /** False: may be null (number, choice) or an empty list. */
  required: boolean;
  help: string;
}

type Rest = Partial<Pick<ItemField, 'min' | 'max' | 'required' | 'help'>>;

/** Builders, so that the table below them reads as a list. */
export const text = (path: string, label: string, rest: Rest = {}): ItemField => field(path, label, 'text', rest);
export const flag = (path: string, label: string, rest: Rest = {}): ItemField => field(path, label, 'flag', rest);
export const count = (path: string, label: string, rest: Rest = {}): ItemField =>
  field(path, label, 'number', { min: 0, ...rest });
export const fixed = (path: string, label: string, fixedUnit: string, rest: Rest = {}): ItemField => ({
  ...count(path, label, rest),
  fixedUnit,
});

export function choice(path: string, label: string, choices: readonly string[], rest: Rest = {}): ItemField {
  return { ...field(path, label, 'choice', rest), choices };
}

export function choices(path: string, label: string, from: readonly string[], rest: Rest = {}): ItemField {
  return { ...field(path, label, 'choices', rest), choices: from };
}

export const mm = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'length', 'mm', 0, 10_000, rest);
export const kg = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'mass', 'kg', 0, 50_000, rest);
export const newton = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'force', 'N', 0, 1e8, rest);
export const newtonMetre = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'torque', 'N·m', 0, 1e7, rest);
export const joule = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'energy', 'J', 0, 1e7, rest);
export const celsius = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'temperature', '°C', -269, 2000, rest);
export const speed = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'speed', 'mm/min', 0, 1e7, rest);
export const rotation = (path: string, label: string, rest: Rest = {}): ItemField =>
  measure(path, label, 'angularSpeed', '°/min', 0, 1e7, rest);

export function ratingCurve(direction: 'tension' | 'compression' | 'torque', label: string): ItemField {
  const [quantity, unit, max] =
    direction === 'torque' ? (['torque', 'N·m', 1e7] as const) : (['force', 'N', 1e8] as const);
  const help = 'What it carries, by temperature; empty when it is not made for this direction.';
  return {
    ...measure(`ratings.${direction}`, label, quantity, unit, 0, max, { required: false, help }),
    type: 'rating-curve',
  };
}

export function list(path: string, label: string, type: 'channels' | 'speed-limits', help: string): ItemField {
  return field(path, label, type, { required: false, help });
}

function measure(
  path: string,
  label: string,
  quantity: Quantity,
  unit: Unit,
  min: number,
  max: number,
  rest: Rest,
): ItemField {
  return { ...field(path, label, 'number', { min, max, ...rest }), quantity, unit };
}

function field(path: string, label: string, type: ItemField['type'], rest: Rest): ItemField {
  return { path, label, type, required: true, help: '', ...rest };
}
