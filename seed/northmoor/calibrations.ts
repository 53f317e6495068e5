import { addDays, addMonths, instantAt, localDateAt, MS_PER_DAY } from '#libs/calendar/src/index.js';
import { Chance } from './chance.js';
import { ITEMS } from './items.js';
import { ZONE } from './people.js';

type Item = (typeof ITEMS)[number];

/** One direction and range of a certificate, in the unit of the item. */
export interface DemoRange {
  direction: 'tension' | 'compression' | 'torque' | 'extension' | 'temperature' | 'speed';
  className: string;
  from: number;
  to: number;
  unit: 'N' | 'mm' | 'N·m' | '°C' | 'mm/min';
}

export interface DemoCalibration {
  tag: string;
  standard: string;
  certificateNumber: string;
  laboratory: string;
  performedAt: Date;
  dueAt: Date;
  asFound: 'within' | 'out-of-tolerance';
  ranges: DemoRange[];
}

/** Days until an item is due, where the story of the demo needs it; for the others a date from their tag. */
const DUE_IN_DAYS: Record<string, number> = {
  'LC-0500-2': -9, // overdue
  'LC-5K-1': 2, // the only cell for 5 kN on the small columns: stops jobs that are planned
  'EX-HOT-1': 13,
  'LH-250K-1': 24,
  'EX-DEFL-2': -2, // overdue since the day before yesterday
};

/** Found out of tolerance at its last visit, and adjusted. */
const FOUND_OUT = 'LC-0500-3';

const GENERATIONS = 3;

/** Three certificates for every item that needs calibration, the newest last. */
export function calibrationsAt(nowMs: number): DemoCalibration[] {
  return ITEMS.filter(({ needsCalibration }) => needsCalibration).flatMap((item) => generationsOf(item, nowMs));
}

/** The three of one item. Their days hang on the day when the item is due, and on nothing else. */
export function generationsOf(item: Item, nowMs: number): DemoCalibration[] {
  const days = DUE_IN_DAYS[item.tag] ?? Math.round(new Chance(`due/${item.tag}`).between(35, 350));
  const dueDate = localDateAt(nowMs + days * MS_PER_DAY, ZONE);
  return Array.from({ length: GENERATIONS }, (_, index) => {
    const age = GENERATIONS - 1 - index;
    const sentEarlyDays = age * 6; // each time it went out six days before it was due
    const dueMs = addMonths(instantAt(addDays(dueDate, sentEarlyDays), '18:00', ZONE), -12 * age, ZONE);
    const performedAt = new Date(instantAt(localDateAt(addMonths(dueMs, -12, ZONE), ZONE), '10:00', ZONE));
    return {
      tag: item.tag,
      standard: standardOf(item),
      // With the day, for two of them may fall in one year: each visit is a little less than a year after the last.
      certificateNumber: `BC-${performedAt.toISOString().slice(2, 10).replaceAll('-', '')}-${item.serialNumber}`,
      laboratory: 'Brackenfell Calibration, Hexley',
      performedAt,
      dueAt: new Date(dueMs),
      asFound: item.tag === FOUND_OUT && age === 0 ? 'out-of-tolerance' : 'within',
      ranges: rangesOf(item),
    };
  });
}

/** Named as their editions are quoted in the trade (from memory). */
function standardOf({ kind, tag }: Item): string {
  if (kind === 'load-cell' || kind === 'extensometer') return kind === 'load-cell' ? 'ISO 7500-1' : 'ISO 9513';
  if (kind === 'chamber') return 'EURAMET cg-20';
  if (kind === 'frame') return 'ASTM E2658';
  return tag.startsWith('TC') ? 'ASTM E220' : 'ISO 9513';
}

function rangesOf(item: Item): DemoRange[] {
  switch (item.kind) {
    case 'load-cell':
      return item.details.torqueCapacityNm > 0
        ? classes('torque', item.details.torqueCapacityNm, 'N·m')
        : [...classes('tension', item.details.capacityN, 'N'), ...classes('compression', item.details.capacityN, 'N')];
    case 'extensometer':
      return [
        {
          direction: 'extension',
          className: extensionClass(item),
          from: 0,
          to: item.details.travelPlusMm,
          unit: 'mm',
        },
      ];
    case 'frame':
      return [
        {
          direction: 'speed',
          className: '1 %',
          from: item.details.speedMinMmPerMin,
          to: item.details.speedMaxMmPerMin,
          unit: 'mm/min',
        },
      ];
    case 'chamber':
      return [
        { direction: 'temperature', className: '±2 °C', from: item.details.minC, to: item.details.maxC, unit: '°C' },
      ];
    case 'transducer':
      return item.details.measures === 'temperature'
        ? [
            {
              direction: 'temperature',
              className: '±1 °C',
              from: item.details.rangeFrom,
              to: item.details.rangeTo,
              unit: '°C',
            },
          ]
        : [
            {
              direction: 'extension',
              className: '0.5',
              from: item.details.rangeFrom,
              to: item.details.rangeTo,
              unit: 'mm',
            },
          ];
    default:
      return [];
  }
}

/** Those for plastics hold class 0.2: ISO 527-1 allows 1 µm of error for a modulus over 50 mm, and class 0.5 allows 1.5 µm. */
function extensionClass({ tag, details }: Extract<Item, { kind: 'extensometer' }>): string {
  if (tag.startsWith('EX-PLAST')) return '0.2';
  return details.contact && details.travelPlusMm < 100 ? '0.5' : '1';
}

/** Class 0.5 over the upper part of the range, class 1 further down; small cells are verified less far down. */
function classes(direction: DemoRange['direction'], capacity: number, unit: 'N' | 'N·m'): DemoRange[] {
  const small = unit === 'N' && capacity < 500;
  return [
    { direction, className: '0.5', from: capacity * (small ? 0.02 : 0.01), to: capacity, unit },
    { direction, className: '1', from: capacity * (small ? 0.005 : 0.002), to: capacity, unit },
  ];
}
