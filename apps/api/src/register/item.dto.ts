import { ITEM_KINDS, ITEM_STATES, UTILITIES } from '#libs/matching/src/index.js';
import type { ItemKind, ItemState, Ratings, Utility } from '#libs/matching/src/index.js';
import type { CalibrationStatus, ItemStateBody, SaveItemBody } from '#libs/contract/src/index.js';
import { Figure, Free, Id, ListOf, OneOf, Parts, Text, When, YesNo } from '../platform/fields.js';

/** Shape only: what each kind needs and its bounds are checked against the matching core's table of item fields. */
export class SaveItemDto implements SaveItemBody {
  @Text({ max: 40 })
  tag: string;

  @OneOf(ITEM_KINDS)
  kind: ItemKind;

  @Text({ max: 120 })
  name: string;

  @Text({ min: 0, max: 120, optional: true })
  model?: string;

  @Text({ min: 0, max: 80, optional: true })
  serialNumber?: string;

  @Text({ min: 0, max: 80, optional: true })
  place?: string;

  @Figure({ unit: 'kg', min: 0, max: 50_000 })
  massKg: number;

  @Figure({ unit: 'mm', min: 0, max: 10_000 })
  lengthMm: number;

  @Free({ about: 'Per direction: points { temperatureC, rating }, rating in N (torque: N·m).' })
  ratings: Ratings;

  @Figure({ unit: '°C', min: -269, max: 2000 })
  temperatureMinC: number;

  @Figure({ unit: '°C', min: -269, max: 2000 })
  temperatureMaxC: number;

  @ListOf((each) => UTILITIES.some((known) => known === each), UTILITIES.join(', '), { type: 'string' })
  utilities: Utility[];

  @YesNo()
  needsCalibration: boolean;

  @Figure({ unit: 'months', min: 1, max: 120, whole: true, optional: true, nullable: true })
  calibrationIntervalMonths?: number | null;

  @Free({ about: 'The fields of its kind.' })
  details: Record<string, unknown>;
}

export class ItemStateDto implements ItemStateBody {
  @OneOf(ITEM_STATES)
  state: ItemState;

  @Text({ max: 2000 })
  why: string;
}

export class FaultDto {
  @Text({ max: 2000 })
  what: string;
}

export class CloseFaultDto {
  @Text({ max: 2000 })
  remedy: string;
}

export class WindowDto {
  @OneOf(['down', 'held', 'calibration-visit', 'extra-shift'])
  kind: 'down' | 'held' | 'calibration-visit' | 'extra-shift';

  @When()
  startsAt: string;

  @When()
  endsAt: string;

  @Text({ max: 400 })
  why: string;
}

export class RigLinkDto {
  @Text({ max: 40 })
  role: string;

  @Id()
  itemId: string;
}

export class RigDto {
  @Parts(() => RigLinkDto, { max: 20 })
  links: RigLinkDto[];
}

export const STATUSES: readonly CalibrationStatus[] = [
  'not-needed',
  'in-force',
  'due-soon',
  'overdue',
  'never',
  'out-of-use',
];

export class ListItemsDto {
  @OneOf(ITEM_KINDS, { optional: true })
  kind?: ItemKind;

  @OneOf(STATUSES, { optional: true })
  status?: CalibrationStatus;

  @Text({ min: 0, max: 100, optional: true })
  q?: string;

  @Text({ max: 40, optional: true, about: 'The `next` of the page before.' })
  cursor?: string;
}
