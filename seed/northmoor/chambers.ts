import { ROOM, UNCALIBRATED, YEARLY } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

/** Temperature chambers: one for cold and heat, one oven. */
export const CHAMBERS: DemoItem<'chamber'>[] = [
  {
    kind: 'chamber',
    tag: 'CH-COLD-1',
    name: 'Chamber −70 to 200 °C',
    model: 'Fellside 70/200',
    serialNumber: 'FS-0288',
    place: 'Bay 30K',
    massKg: 120,
    lengthMm: 0,
    ratings: {},
    temperatureMinC: -70,
    temperatureMaxC: 200,
    utilities: ['power-400v', 'liquid-nitrogen'],
    ...YEARLY,
    details: {
      minC: -70,
      maxC: 200,
      insideWidthMm: 260,
      insideHeightMm: 600,
      fitsClearanceMinMm: 430,
      fitsClearanceMaxMm: 520,
      rampCPerMin: 4,
      soakBaseMin: 10,
      soakMinPerMm: 1.5,
    },
  },
  {
    kind: 'chamber',
    tag: 'CH-OVEN-1',
    name: 'Split oven to 200 °C',
    model: 'Fellside 200',
    serialNumber: 'FS-0191',
    place: 'Bay 50K',
    massKg: 85,
    lengthMm: 0,
    ratings: {},
    temperatureMinC: 5,
    temperatureMaxC: 200,
    utilities: ['power-400v'],
    ...YEARLY,
    details: {
      minC: 30,
      maxC: 200,
      insideWidthMm: 240,
      insideHeightMm: 560,
      fitsClearanceMinMm: 400,
      fitsClearanceMaxMm: 520,
      rampCPerMin: 5,
      soakBaseMin: 10,
      soakMinPerMm: 1.5,
    },
  },
];

/** Guards for frames that have none built on. */
export const GUARDS: DemoItem<'guard'>[] = [
  guard('GU-S1', 'Screen for single columns', 120, 150, 260),
  guard('GU-S2', 'Screen for single columns', 120, 150, 260),
  guard('GU-T1', 'Shield for the torsion bench', 300, 300, 360),
];

/** Thermocouples and a displacement transducer. */
export const TRANSDUCERS: DemoItem<'transducer'>[] = [
  transducer('TC-K-1', 'Thermocouple type K', 'temperature', 'temperature', -100, 400),
  transducer('TC-K-2', 'Thermocouple type K', 'temperature', 'temperature', -100, 400),
  transducer('DT-50-1', 'Displacement transducer 50 mm', 'displacement', 'displacement', 0, 50),
];

function guard(
  tag: string,
  name: string,
  energyJ: number,
  fitsClearanceMinMm: number,
  fitsClearanceMaxMm: number,
): DemoItem<'guard'> {
  return {
    kind: 'guard',
    tag,
    name,
    model: 'Palisade',
    serialNumber: `PA-${tag.slice(3)}`,
    place: 'By the door',
    massKg: 9,
    lengthMm: 0,
    ratings: {},
    ...ROOM,
    ...UNCALIBRATED,
    details: { energyJ, interlocked: true, fitsClearanceMinMm, fitsClearanceMaxMm },
  };
}

function transducer(
  tag: string,
  name: string,
  measures: 'temperature' | 'displacement',
  channel: 'temperature' | 'displacement',
  rangeFrom: number,
  rangeTo: number,
): DemoItem<'transducer'> {
  return {
    kind: 'transducer',
    tag,
    name,
    model: 'Wren',
    serialNumber: `WR-${tag.slice(3)}`,
    place: 'Extensometer cabinet',
    massKg: 0.05,
    lengthMm: 0,
    ratings: {},
    temperatureMinC: measures === 'temperature' ? -100 : 5,
    temperatureMaxC: measures === 'temperature' ? 400 : 60,
    utilities: [],
    ...YEARLY,
    details: { measures, channel, rangeFrom, rangeTo },
  };
}
