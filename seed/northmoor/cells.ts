import type { Coupling } from '#libs/matching/src/index.js';
import { flange, ROOM, shaft, stud, units, YEARLY } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

/** The load cells. The flange of a cell says on which frames it can hang, its stud what can hang on it. */
export const CELLS: DemoItem<'load-cell'>[] = [
  ...force('LC-0010', 1, 10, flange(60), stud(6), 0.2, 62),
  ...force('LC-0050', 1, 50, flange(60), stud(6), 0.2, 62),
  ...force('LC-0100', 2, 100, flange(60), stud(6), 0.2, 62),
  ...force('LC-0500', 3, 500, flange(60), stud(15), 0.4, 66),
  ...force('LC-1K', 2, 1000, flange(60), stud(15), 0.5, 66),
  ...force('LC-5K', 1, 5000, flange(60), stud(15), 0.9, 70),
  ...force('LM-0500', 1, 500, flange(100), stud(15), 1.8, 78),
  ...force('LM-1K', 1, 1000, flange(100), stud(15), 1.8, 78),
  ...force('LM-2K', 1, 2000, flange(100), stud(15), 1.9, 78),
  ...force('LM-5K', 3, 5000, flange(100), stud(15), 2.1, 80),
  ...force('LM-10K', 2, 10_000, flange(100), stud(30), 2.6, 86),
  ...force('LM-30K', 1, 30_000, flange(100), stud(30), 3.4, 92),
  ...force('LM-50K', 2, 50_000, flange(100), stud(30), 4.2, 98),
  ...force('LH-25K', 1, 25_000, flange(160), stud(60), 9, 140),
  ...force('LH-100K', 2, 100_000, flange(160), stud(60), 14, 160),
  ...force('LH-250K', 1, 250_000, flange(160), stud(60), 26, 190),
  torque('LT-0005-1', 5),
  torque('LT-0020-1', 20),
  torque('LT-0200-1', 200),
];

function force(
  tag: string,
  count: number,
  capacityN: number,
  frameCoupling: Coupling,
  specimenCoupling: Coupling,
  massKg: number,
  lengthMm: number,
): DemoItem<'load-cell'>[] {
  return units(count, {
    kind: 'load-cell',
    tag,
    name: `Load cell ${capacityN >= 1000 ? `${capacityN / 1000} kN` : `${capacityN} N`}`,
    model: `Plumb ${tag.slice(0, 2)}`,
    serialNumber: `PL${tag.replaceAll('-', '')}`,
    place: capacityN > 10_000 ? 'Cell rack, bottom' : 'Cell drawer',
    massKg,
    lengthMm,
    ratings: {},
    ...ROOM,
    temperatureMinC: 10,
    temperatureMaxC: 40,
    ...YEARLY,
    details: {
      capacityN,
      torqueCapacityNm: 0,
      directions: ['tension', 'compression'],
      overloadPct: capacityN <= 100 ? 200 : 150,
      frameCoupling,
      specimenCoupling,
    },
  });
}

function torque(tag: string, torqueCapacityNm: number): DemoItem<'load-cell'> {
  return {
    kind: 'load-cell',
    tag,
    name: `Torque cell ${torqueCapacityNm} N·m`,
    model: 'Plumb LT',
    serialNumber: `PL${tag.replaceAll('-', '')}`,
    place: 'Bay T, shelf',
    massKg: 3.2,
    lengthMm: 95,
    ratings: {},
    ...ROOM,
    temperatureMinC: 10,
    temperatureMaxC: 40,
    ...YEARLY,
    details: {
      capacityN: 0,
      torqueCapacityNm,
      directions: ['torque'],
      overloadPct: 150,
      frameCoupling: shaft(40),
      specimenCoupling: shaft(20),
    },
  };
}
