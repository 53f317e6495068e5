/** What goes wrong in the demo lab, besides calibrations that are due (see `calibrations.ts`) and jobs that are late. */

/** Frames and items that cannot be used for a while: working days from today and times on the wall. */
export const WINDOWS: readonly {
  key: string;
  tag: string;
  kind: 'down' | 'held';
  from: readonly [workingDay: number, time: string];
  to: readonly [workingDay: number, time: string];
  why: string;
}[] = [
  {
    key: 'fr-50k-down',
    tag: 'FR-50K',
    kind: 'down',
    from: [1, '06:00'],
    to: [2, '21:30'],
    why: 'Crosshead drive belt replaced by the service engineer',
  },
  {
    key: 'ex-video-2-lent',
    tag: 'EX-VIDEO-2',
    kind: 'held',
    from: [-2, '08:00'],
    to: [6, '12:00'],
    why: 'Lent to the wheel workshop',
  },
];

/** The cell whose readings creep up over the months: every shift check passes, the control chart shows it. */
export const DRIFTING_CELL = 'LM-10K-1';

/** The load cell whose shift check failed the working day before today. */
export const FAILED_CELL = {
  tag: 'LC-1K-2',
  frame: 'FR-1K',
  reference: 200,
  reading: 203.9,
  what: 'Shift check failed: read 203.9 N at 200 N (1.95 %, allowed 1 %)',
  nonconformity: 'Load cell LC-1K-2 reads 1.95 % high at 200 N. Results since its last good check may be high.',
} as const;

/** Faults: one that is open, and some that were mended. Days are working days from today. */
export const FAULTS: readonly {
  key: string;
  tag: string;
  what: string;
  by: string;
  opened: readonly [number, string];
  closed?: readonly [number, string];
  remedy?: string;
}[] = [
  { key: 'lc-1k-2', tag: FAILED_CELL.tag, what: FAILED_CELL.what, by: 'mei.lindqvist', opened: [-1, '13:52'] },
  {
    key: 'gc-air10-2',
    tag: 'GC-AIR10-2',
    what: 'Hose leaks at the left jaw, pressure falls below 5 bar',
    by: 'gareth.pell',
    opened: [-3, '10:20'],
  },
  {
    key: 'fr-10k-limit',
    tag: 'FR-10K',
    what: 'Lower limit stop slips when it is set',
    by: 'tom.ashdown',
    opened: [-38, '07:15'],
    closed: [-36, '09:40'],
    remedy: 'Clamp screw replaced, stop tested three times by hand',
  },
  {
    key: 'jf-w10-diamond-2',
    tag: 'JF-W10-DIAMOND-2',
    what: 'Teeth worn at the front edge, specimens slip',
    by: 'priya.raman',
    opened: [-61, '11:05'],
    closed: [-55, '08:30'],
    remedy: 'Faces reground and hardness checked',
  },
];

/** Items that nobody uses any more, with the reason. */
export const OUT_OF_USE: Record<string, string> = { 'GA-FILM-3': 'Spring broken, no spare part to be had' };
