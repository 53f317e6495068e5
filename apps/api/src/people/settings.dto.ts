import type { LabObjective } from '#libs/planning/src/index.js';
import type { MatchSettings } from '#libs/matching/src/index.js';
import type { LabSettings, Retention, WeeklyShift } from '#libs/contract/src/index.js';
import { ValidateBy } from 'class-validator';
import { Figure, Free, Part, Parts, Text } from '../platform/fields.js';

const CLOCK = { pattern: /^([01]\d|2[0-3]):[0-5]\d$/, allowed: 'a time of the day, e.g. 06:00', max: 5 };

export class WeeklyShiftDto implements WeeklyShift {
  @Figure({ min: 1, max: 7, whole: true, about: '1 is Monday.' })
  weekday!: number;

  @Text(CLOCK)
  from!: string;

  @Text(CLOCK)
  to!: string;

  @Text({ max: 40 })
  name!: string;
}

const MONTHS = { min: 1, max: 120, whole: true, unit: 'months' };

export class RetentionDto implements Retention {
  @Figure(MONTHS)
  endedTasksMonths!: number;

  @Figure(MONTHS)
  endedSessionsMonths!: number;

  @Figure(MONTHS)
  noticesMonths!: number;

  @Figure(MONTHS)
  deliveriesMonths!: number;

  @Figure({ min: 1, max: 30, whole: true, unit: 'd' })
  idempotencyKeysDays!: number;
}

/** What people may set; `demo` is not among it. */
export class LabSettingsDto implements Omit<LabSettings, 'demo'> {
  @Text({ max: 120 })
  name!: string;

  @Text({ min: 0, max: 500 })
  address!: string;

  @Text({ min: 0, max: 200 })
  contact!: string;

  @Text({ max: 60, example: 'Europe/London' })
  @ValidateBy(
    { name: 'timeZone', validator: { validate: isTimeZone, defaultMessage: () => 'a time zone' } },
    { context: { allowed: 'an IANA time zone, e.g. Europe/London', unit: '' } },
  )
  timeZone!: string;

  @Parts(() => WeeklyShiftDto, { max: 60 })
  shifts!: WeeklyShiftDto[];

  @Figure({ min: 0, max: 10_080, whole: true, unit: 'min' })
  freezeMin!: number;

  @Figure({ min: 1, max: 366, whole: true, unit: 'd' })
  horizonDays!: number;

  @Figure({ above: 0, max: 120, unit: 's' })
  planningSeconds!: number;

  @Figure({ min: 0, max: 480, whole: true, unit: 'min' })
  warmUpMin!: number;

  @Figure({ min: 0, max: 10_080, whole: true, unit: 'min' })
  warmUpAfterMin!: number;

  @Figure({ min: 0, max: 43_200, whole: true, unit: 'min' })
  assumedArrivalMin!: number;

  @Figure({ min: 30, max: 86_400, whole: true, unit: 'min' })
  calibrationVisitMin!: number;

  @Figure({ min: 60, max: 10_080, whole: true, unit: 'min' })
  shiftCheckValidMin!: number;

  @Figure({ above: 0, max: 10, unit: '%' })
  shiftCheckTolerancePct!: number;

  @Figure({ min: 0, max: 366, whole: true, unit: 'd' })
  calibrationNoticeDays!: number;

  @Figure({ above: 0, max: 100, unit: '°C/min' })
  rampCPerMin!: number;

  @Figure({ min: 0, max: 2_880, whole: true, unit: 'min' })
  soakMin!: number;

  @Free({ about: 'Settings of matching, as they were read.' })
  matching!: MatchSettings;

  @Free({ about: 'Weights of planning, as they were read.' })
  objective!: LabObjective;

  @Part(() => RetentionDto)
  retention!: RetentionDto;
}

function isTimeZone(value: unknown): boolean {
  try {
    return typeof value === 'string' && Boolean(new Intl.DateTimeFormat('en', { timeZone: value }));
  } catch {
    return false;
  }
}
