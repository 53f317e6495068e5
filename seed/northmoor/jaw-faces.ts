import type { FaceShape, FaceSurface } from '#libs/matching/src/index.js';
import { rated, ratedOver, ROOM, UNCALIBRATED, units } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

/** Sets of four jaw faces, by the seat that they go into; grips of one family share a seat. */
export const JAW_FACES: DemoItem<'jaw-face'>[] = [
  ...faces('A100', 2, 'rubber', 'flat', 'rubber', 50, [0, 8], 1000),
  ...faces('A100', 2, 'fine', 'flat', 'fine-serrated', 30, [0, 9], 1000),
  ...faces('A100', 2, 'line', 'line', 'rubber', 50, [0, 2], 1000),
  ...faces('A200', 2, 'lined', 'flat', 'lined', 60, [0, 8], 5000),
  ...faces('A200', 2, 'rubber', 'flat', 'rubber', 60, [0, 10], 5000),
  ...faces('A200', 2, 'fine', 'flat', 'fine-serrated', 60, [0, 18], 10_000),
  ...faces('S100', 1, 'smooth', 'flat', 'smooth', 30, [0, 10], 1000, true),
  ...faces('S100', 2, 'fine', 'flat', 'fine-serrated', 25, [0, 9], 1000, true),
  ...faces('S100', 1, 'vee', 'vee', 'serrated', 12, [1, 8], 1000, true),
  ...faces('S500', 2, 'fine', 'flat', 'fine-serrated', 50, [0, 14], 5000, true),
  ...faces('S500', 1, 'diamond', 'flat', 'diamond', 40, [0, 14], 5000, true),
  ...faces('S500', 1, 'vee', 'vee', 'serrated', 16, [2, 14], 5000, true),
  ...faces('W5', 2, 'serrated', 'flat', 'serrated', 25, [0, 7], 5000),
  ...faces('W5', 2, 'vee', 'vee', 'serrated', 12, [1.5, 8], 5000),
  ...faces('W5', 1, 'fine', 'flat', 'fine-serrated', 25, [0, 7], 5000),
  ...faces('W10', 2, 'serrated', 'flat', 'serrated', 30, [0, 13], 10_000),
  ...faces('W10', 3, 'diamond', 'flat', 'diamond', 30, [0, 13], 10_000),
  ...faces('W10', 1, 'vee', 'vee', 'serrated', 20, [3, 14], 10_000),
  ...faces('W30', 1, 'serrated', 'flat', 'serrated', 40, [0, 16], 30_000, true),
  ...faces('W30', 2, 'diamond', 'flat', 'diamond', 40, [0, 16], 30_000, true),
  ...faces('W30', 1, 'vee', 'vee', 'serrated', 25, [4, 18], 30_000, true),
  ...faces('W50', 2, 'serrated', 'flat', 'serrated', 50, [0, 20], 50_000),
  ...faces('W50', 1, 'diamond', 'flat', 'diamond', 50, [0, 20], 50_000),
  ...faces('W50', 2, 'vee', 'vee', 'serrated', 30, [5, 24], 50_000),
  ...faces('H50', 1, 'diamond', 'flat', 'diamond', 60, [0, 22], 50_000),
  ...faces('H50', 1, 'vee', 'vee', 'serrated', 35, [6, 26], 50_000),
  ...faces('S1000', 1, 'fine', 'flat', 'fine-serrated', 60, [0, 20], 10_000, true),
  ...faces('S1000', 1, 'diamond', 'flat', 'diamond', 50, [0, 20], 10_000, true),
  ...faces('W100', 2, 'serrated', 'flat', 'serrated', 65, [0, 28], 100_000),
  ...faces('W100', 1, 'vee', 'vee', 'serrated', 40, [8, 32], 100_000),
  ...faces('W250', 1, 'serrated', 'flat', 'serrated', 90, [0, 45], 250_000),
  ...faces('W250', 1, 'vee', 'vee', 'serrated', 60, [12, 50], 250_000),
];

function faces(
  slot: string,
  count: number,
  word: string,
  shape: FaceShape,
  surface: FaceSurface,
  widthMm: number,
  [openingMinMm, openingMaxMm]: readonly [number, number],
  ratingN: number,
  hot = false,
): DemoItem<'jaw-face'>[] {
  return units(count, {
    kind: 'jaw-face',
    tag: `JF-${slot}-${word.toUpperCase()}`,
    name: `${shape === 'vee' ? 'Vee' : shape === 'line' ? 'Line' : 'Flat'} faces, ${surface.replace('-', ' ')}, for ${slot}`,
    model: `Heddle ${slot} ${word}`,
    serialNumber: `HJ${slot}${word.slice(0, 2).toUpperCase()}-`,
    place: 'Face cabinet',
    massKg: 0.02 + widthMm * 0.004,
    lengthMm: 0,
    ratings: hot ? ratedOver(ratingN, -70, 250, 0.8, 'tension') : rated(ratingN, 'tension'),
    ...ROOM,
    ...(hot ? { temperatureMinC: -70, temperatureMaxC: 250 } : {}),
    ...UNCALIBRATED,
    details: { slot, shape, surface, widthMm, openingMinMm, openingMaxMm },
  });
}
