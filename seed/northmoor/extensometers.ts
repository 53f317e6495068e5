import type { ExtensometerDetails } from '#libs/matching/src/index.js';
import { units, YEARLY } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

/** What measures strain or deflection at the specimen. */
export const EXTENSOMETERS: DemoItem<'extensometer'>[] = [
  ...extensometers('EX-CLIP50', 'Clip-on 25/50 mm', 'Linnet 50', 3, {
    gaugeLengthsMm: [25, 50],
    travelPlusMm: 12.5,
    travelMinusMm: 1,
  }),
  ...extensometers('EX-CLIP10', 'Clip-on 10 mm', 'Linnet 10', 1, {
    gaugeLengthsMm: [10, 12.5],
    travelPlusMm: 4,
    travelMinusMm: 2,
  }),
  ...extensometers('EX-CLIP80', 'Clip-on 50/80 mm for sheet', 'Linnet 80', 1, {
    gaugeLengthsMm: [50, 80],
    travelPlusMm: 40,
    travelMinusMm: 2,
  }),
  ...extensometers('EX-PLAST', 'Plastics clip-on 50/75 mm', 'Linnet 75', 2, {
    gaugeLengthsMm: [50, 75],
    travelPlusMm: 10,
    travelMinusMm: 1,
    specimenMaxMm: 14,
  }),
  ...extensometers(
    'EX-HOT',
    'Chamber clip-on 25/50 mm',
    'Linnet H50',
    1,
    { gaugeLengthsMm: [25, 50], travelPlusMm: 12.5, travelMinusMm: 1 },
    [-70, 200],
  ),
  ...extensometers('EX-VIDEO', 'Video, 10 to 100 mm', 'Heron V', 2, {
    gaugeLengthsMm: [10, 20, 25, 50, 80, 100],
    travelPlusMm: 200,
    travelMinusMm: 50,
    contact: false,
    channel: 'video',
    specimenMinMm: 0.02,
    specimenMaxMm: 60,
  }),
  ...extensometers('EX-LONG', 'Long-travel arms for rubber', 'Egret 800', 1, {
    gaugeLengthsMm: [10, 20, 25],
    travelPlusMm: 800,
    travelMinusMm: 0,
    specimenMaxMm: 10,
  }),
  ...extensometers('EX-COMP', 'Compressometer', 'Linnet C', 1, {
    gaugeLengthsMm: [10, 25, 50],
    travelPlusMm: 1,
    travelMinusMm: 6,
    specimenMaxMm: 50,
  }),
  ...extensometers(
    'EX-DEFL',
    'Deflectometer for bend tests',
    'Linnet D',
    2,
    {
      gaugeLengthsMm: [1],
      travelPlusMm: 25,
      travelMinusMm: 25,
      measures: 'deflection',
      specimenMaxMm: 150,
    },
    [-70, 200],
  ),
];

function extensometers(
  tag: string,
  name: string,
  model: string,
  count: number,
  details: Partial<ExtensometerDetails> & Pick<ExtensometerDetails, 'gaugeLengthsMm'>,
  [temperatureMinC, temperatureMaxC]: readonly [number, number] = [5, 45],
): DemoItem<'extensometer'>[] {
  return units(count, {
    kind: 'extensometer',
    tag,
    name,
    model,
    serialNumber: `LN${tag.slice(3)}`,
    place: 'Extensometer cabinet',
    massKg: 0.08,
    lengthMm: 0,
    ratings: {},
    temperatureMinC,
    temperatureMaxC,
    utilities: [],
    ...YEARLY,
    details: {
      travelPlusMm: 10,
      travelMinusMm: 1,
      measures: 'axial',
      contact: true,
      channel: 'strain',
      specimenMinMm: 0.5,
      specimenMaxMm: 30,
      ...details,
    },
  });
}
