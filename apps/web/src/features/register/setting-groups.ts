/** One figure of the settings: where it stands in them, and how it is called. */
export interface SettingLine {
  path: string;
  label: string;
  unit?: string;
  help?: string;
}

/** The figures of the settings, in the order in which they are shown. */
export const SETTING_GROUPS: { title: string; lines: SettingLine[] }[] = [
  {
    title: 'Planning',
    lines: [
      { path: 'freezeMin', label: 'Published plan is kept for', unit: 'working min' },
      { path: 'horizonDays', label: 'Planned ahead', unit: 'days' },
      { path: 'planningSeconds', label: 'One planning run takes at most', unit: 's' },
      { path: 'warmUpMin', label: 'Warm-up of a frame', unit: 'min' },
      { path: 'warmUpAfterMin', label: 'Warm-up when it stood closed for', unit: 'min' },
      {
        path: 'assumedArrivalMin',
        label: 'Assumed wait for specimens not announced',
        unit: 'min',
        help: 'Shown as assumed.',
      },
      { path: 'calibrationVisitMin', label: 'An item is away for calibration', unit: 'min' },
    ],
  },
  {
    title: 'What counts most',
    lines: [
      { path: 'objective.perLateMin', label: 'A minute late', help: 'Times the weight of the job.' },
      { path: 'objective.perChangeoverMin', label: 'A minute of changeover' },
      { path: 'objective.perMovedMin', label: 'A minute moved from the published start' },
      { path: 'objective.perMovedFrame', label: 'A job moved to another frame' },
      { path: 'objective.perEndMin', label: 'A minute of later end' },
      { path: 'objective.perLoadHourSquared', label: 'Uneven load, per squared hour' },
    ],
  },
  {
    title: 'Matching',
    lines: [
      { path: 'matching.forceMargin', label: 'Reserve above the highest force', help: 'A share: 0.2 is 20 %.' },
      {
        path: 'matching.hungWeightCaution',
        label: 'Hung weight is a caution above',
        help: 'A share of the cell’s capacity.',
      },
      { path: 'matching.cellBandLow', label: 'Preferred use of a cell from', help: 'A share of its capacity.' },
      { path: 'matching.cellBandHigh', label: 'Preferred use of a cell up to', help: 'A share of its capacity.' },
      { path: 'matching.clearanceMm', label: 'Clearance between parts', unit: 'mm' },
      { path: 'matching.guardFromJ', label: 'A guard is needed from', unit: 'J' },
      { path: 'matching.roomMinC', label: 'Room temperature from', unit: '°C' },
      { path: 'matching.roomMaxC', label: 'Room temperature up to', unit: '°C' },
    ],
  },
  {
    title: 'How long passing data is kept',
    lines: [
      { path: 'retention.endedTasksMonths', label: 'Finished background tasks', unit: 'months' },
      { path: 'retention.endedSessionsMonths', label: 'Ended sessions', unit: 'months' },
      { path: 'retention.noticesMonths', label: 'Notices', unit: 'months' },
      { path: 'retention.deliveriesMonths', label: 'Log of deliveries to other programs', unit: 'months' },
      { path: 'retention.idempotencyKeysDays', label: 'Answers to repeated calls of programs', unit: 'days' },
    ],
  },
  {
    title: 'Bench and calibration',
    lines: [
      {
        path: 'shiftCheckValidMin',
        label: 'A shift check holds for',
        unit: 'min',
        help: '8 to 12 h is common practice, no source.',
      },
      { path: 'shiftCheckTolerancePct', label: 'Largest error of a shift check', unit: '%' },
      { path: 'calibrationNoticeDays', label: 'A calibration is announced before it is due', unit: 'days' },
      { path: 'rampCPerMin', label: 'Chamber ramp where none is known', unit: '°C/min' },
      { path: 'soakMin', label: 'Soak where none is known', unit: 'min' },
    ],
  },
];
