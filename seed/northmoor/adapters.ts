import type { Coupling } from '#libs/matching/src/index.js';
import { rated, ratedOver, ROOM, socket, stud, threadIn, threadOut, UNCALIBRATED, units } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

/** What leads from one size of pin to another, lengthens the train, or reaches into the chamber. */
export const ADAPTERS: DemoItem<'adapter'>[] = [
  ...adapters('AD-15-6', 'Reducer 15 to 6 mm', 4, socket(15), stud(6), 500, 0.08, 32),
  ...adapters('AD-6-15', 'Step up 6 to 15 mm', 2, socket(6), stud(15), 500, 0.12, 34),
  ...adapters('AD-30-15', 'Reducer 30 to 15 mm', 8, socket(30), stud(15), 5000, 0.5, 45),
  ...adapters('AD-15-30', 'Step up 15 to 30 mm', 2, socket(15), stud(30), 5000, 0.7, 50),
  ...adapters('AD-60-30', 'Reducer 60 to 30 mm', 4, socket(60), stud(30), 50_000, 3.1, 85),
  ...adapters('AD-30-60', 'Step up 30 to 60 mm', 2, socket(30), stud(60), 50_000, 3.4, 90),
  ...adapters('AD-15-X200', 'Extension 200 mm, 15 mm pins', 2, socket(15), stud(15), 5000, 0.45, 200),
  ...adapters('AD-30-X300', 'Chamber pull rod 300 mm, 30 mm pins', 2, socket(30), stud(30), 30_000, 2.4, 300, true),
  ...adapters('AD-30-X15', 'Chamber pull rod 300 mm, 30 to 15 mm', 2, socket(30), stud(15), 5000, 1.6, 300, true),
  ...adapters('AD-60-X400', 'Extension 400 mm, 60 mm pins', 2, socket(60), stud(60), 250_000, 11, 400),
  ...adapters('AD-30-M12', 'Thread stud M12 on 30 mm', 2, socket(30), threadOut(12), 20_000, 0.7, 50),
  ...adapters('AD-M12-30', 'Pin stud 30 mm on M12', 2, threadIn(12), stud(30), 20_000, 0.7, 45),
];

function adapters(
  tag: string,
  name: string,
  count: number,
  one: Coupling,
  other: Coupling,
  ratingN: number,
  massKg: number,
  lengthMm: number,
  hot = false,
): DemoItem<'adapter'>[] {
  return units(count, {
    kind: 'adapter',
    tag,
    name,
    model: `Tenon ${tag.slice(3)}`,
    serialNumber: `TN${tag.slice(3).replaceAll('-', '')}`,
    place: 'Adapter drawer',
    massKg,
    lengthMm,
    ratings: hot
      ? ratedOver(ratingN, -70, 250, 0.8, 'tension', 'compression')
      : rated(ratingN, 'tension', 'compression'),
    ...ROOM,
    ...(hot ? { temperatureMinC: -70, temperatureMaxC: 250 } : {}),
    ...UNCALIBRATED,
    details: { ends: [one, other] as const },
  });
}
