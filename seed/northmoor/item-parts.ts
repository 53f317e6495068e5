import type { Coupling, Direction, Item, ItemKind, Ratings } from '#libs/matching/src/index.js';

/** An item as the demo lab writes it down: what the register enters, without id, calibrations and promises. */
export type DemoItem<K extends ItemKind = ItemKind> = Omit<
  Extract<Item, { kind: K }>,
  'id' | 'calibrations' | 'heldWindows' | 'state'
> & {
  serialNumber: string;
  /** Months between calibrations; null where none is needed. */
  intervalMonths: number | null;
};

/** A pin-and-clevis end: the stud has the hole, the socket goes over it and takes the pin. Size is the pin's, mm. */
export const stud = (sizeMm: number): Coupling => ({ type: 'clevis', sizeMm, gender: 'male' });
export const socket = (sizeMm: number): Coupling => ({ type: 'clevis', sizeMm, gender: 'female' });
/** A bolted face; size is the bolt circle, mm. */
export const flange = (sizeMm: number): Coupling => ({ type: 'flange', sizeMm, gender: 'plain' });
export const threadOut = (sizeMm: number): Coupling => ({ type: 'thread', sizeMm, gender: 'male' });
export const threadIn = (sizeMm: number): Coupling => ({ type: 'thread', sizeMm, gender: 'female' });
export const shaft = (sizeMm: number): Coupling => ({ type: 'shaft', sizeMm, gender: 'male' });
export const bore = (sizeMm: number): Coupling => ({ type: 'shaft', sizeMm, gender: 'female' });

/** The same rating at room temperature in each direction named, N (torque: N·m). */
export function rated(rating: number, ...directions: Direction[]): Ratings {
  return Object.fromEntries(directions.map((direction) => [direction, [{ temperatureC: 23, rating }]]));
}

/** Ratings that fall where it gets hot: whole from the coldest to 80 °C, `hotFraction` of it at the hottest. */
export function ratedOver(
  rating: number,
  coldC: number,
  hotC: number,
  hotFraction: number,
  ...directions: Direction[]
): Ratings {
  const curve = [
    { temperatureC: coldC, rating },
    { temperatureC: 80, rating },
    { temperatureC: hotC, rating: rating * hotFraction },
  ];
  return Object.fromEntries(directions.map((direction) => [direction, curve]));
}

/** What most items share: room temperature only, no utilities, no calibration. */
export const ROOM = { temperatureMinC: 5, temperatureMaxC: 60, utilities: [] } as const;
export const UNCALIBRATED = { needsCalibration: false, intervalMonths: null } as const;
export const YEARLY = { needsCalibration: true, intervalMonths: 12 } as const;

/** Equal units, tagged -1, -2, … with serial numbers that differ. */
export function units<Each extends { tag: string; serialNumber: string }>(count: number, each: Each): Each[] {
  return Array.from({ length: count }, (_, index) => ({
    ...each,
    tag: `${each.tag}-${index + 1}`,
    serialNumber: `${each.serialNumber}${String(index + 1).padStart(2, '0')}`,
  }));
}
