import type { LabSettings, WeeklyShift } from '#libs/contract/src/index.js';
import { ZONE } from './people.js';
import type { ShiftPattern } from './people.js';

/** The lab's two shifts, which meet for half an hour to hand over. */
export const SHIFT_HOURS = {
  early: { from: '06:00', to: '14:00' },
  late: { from: '13:30', to: '21:30' },
} as const;

const WORK_WEEK = [1, 2, 3, 4, 5];

const SHIFTS: WeeklyShift[] = WORK_WEEK.flatMap((weekday) => [
  { weekday, ...SHIFT_HOURS.early, name: 'early' },
  { weekday, ...SHIFT_HOURS.late, name: 'late' },
]);

/** What the demo lab sets otherwise than a new lab. */
export const SETTINGS: Partial<LabSettings> = {
  name: 'Northmoor Cycles materials lab',
  address: 'Northmoor Cycles\nMaterials test lab, Hall 3\nOld Mill Lane\nNorthmoor',
  contact: 'Ruth Calloway, ruth.calloway@northmoor.example',
  timeZone: ZONE,
  shifts: SHIFTS,
  demo: true,
};

/** Days on which the lab is closed, as month and day. */
export const CLOSED_DAYS = [
  { monthDay: '01-01', name: "New Year's Day" },
  { monthDay: '12-25', name: 'Christmas Day' },
  { monthDay: '12-26', name: 'Boxing Day' },
];

/** The shift that a pattern means in a week, counted from any Monday: those who take turns are early in even weeks. */
export function shiftOf(pattern: ShiftPattern, week: number): 'early' | 'late' {
  if (pattern !== 'turns') return pattern;
  return week % 2 === 0 ? 'early' : 'late';
}
