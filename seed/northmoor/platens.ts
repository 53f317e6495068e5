import { rated, ratedOver, ROOM, socket, UNCALIBRATED } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

/** Compression platens, a pair counts as one item. */
export const PLATENS: DemoItem<'platen'>[] = [
  platens('PL-50-1', 'Platens 50 mm', 15, 50, 5000, false),
  platens('PL-50-2', 'Platens 50 mm', 15, 50, 5000, false),
  platens('PL-150-1', 'Foam platens 150 mm', 15, 150, 2000, false),
  platens('PL-100-1', 'Platens 100 mm, spherical seat', 30, 100, 50_000, true, true),
  platens('PL-100-2', 'Platens 100 mm', 30, 100, 50_000, false),
  platens('PL-200-1', 'Foam platens 200 mm', 30, 200, 10_000, false),
  platens('PL-150-2', 'Hardened platens 150 mm, spherical seat', 60, 150, 250_000, true),
];

function platens(
  tag: string,
  name: string,
  pin: number,
  diameterMm: number,
  ratingN: number,
  sphericalSeat: boolean,
  hot = false,
): DemoItem<'platen'> {
  const massKg = Number((diameterMm * diameterMm * 0.00012 * (ratingN > 40_000 ? 2 : 1)).toFixed(2));
  return {
    kind: 'platen',
    tag,
    name,
    model: `Anvil ${diameterMm}`,
    serialNumber: `AN-${tag.slice(3)}`,
    place: 'Fixture shelf',
    massKg,
    lengthMm: 40 + (sphericalSeat ? 25 : 0),
    ratings: hot ? ratedOver(ratingN, -70, 250, 0.9, 'compression') : rated(ratingN, 'compression'),
    ...ROOM,
    ...(hot ? { temperatureMinC: -70, temperatureMaxC: 250 } : {}),
    ...UNCALIBRATED,
    details: {
      side: 'pair',
      coupling: socket(pin),
      lowerMassKg: massKg,
      lowerLengthMm: 40,
      outsideWidthMm: diameterMm,
      diameterMm,
      sphericalSeat,
    },
  };
}
