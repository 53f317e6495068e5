import { Figure, Id, OneOf, Text, When } from '../platform/fields.js';

const EDIT_KINDS = [
  'move',
  'unpin',
  'hold',
  'unhold',
  'frame-down',
  'extra-shift',
  'extra-item',
  'technician-off',
  'weight',
];

export class PinDto {
  @Id()
  jobId!: string;

  @Id()
  frameId!: string;

  @When({
    optional: true,
    nullable: true,
    about: 'When testing begins; without it the job is pinned to the frame only.',
  })
  startsAt?: string | null;
}

export class HoldDto {
  @Id()
  jobId!: string;

  @Text({ min: 3, max: 500 })
  why!: string;
}

export class FitQueryDto {
  @Id()
  jobId!: string;

  @When({ optional: true })
  startsAt?: string;

  @Id({ optional: true, about: 'A trial plan whose extra shifts count too.' })
  trialId?: string;
}

export class NewTrialDto {
  @Text({ max: 120, optional: true })
  name?: string;
}

/** One change of a trial plan; which fields it needs is said by its kind. */
export class TrialEditDto {
  @OneOf(EDIT_KINDS)
  kind!: string;

  @Id({ optional: true, about: 'move, unpin, hold, unhold, weight' })
  jobId?: string;

  @Id({ optional: true, about: 'move, frame-down, extra-shift' })
  frameId?: string;

  @Id({ optional: true, about: 'technician-off, extra-shift' })
  personId?: string;

  @Id({ optional: true, about: 'extra-item' })
  likeItemId?: string;

  @When({ optional: true, about: 'move, frame-down, extra-shift, technician-off' })
  startsAt?: string;

  @When({ optional: true, about: 'frame-down, extra-shift, technician-off' })
  endsAt?: string;

  @Text({ min: 3, max: 500, optional: true, about: 'hold, frame-down' })
  why?: string;

  @Figure({ above: 0, max: 100, optional: true, about: 'weight; 1 is ordinary' })
  weight?: number;
}
