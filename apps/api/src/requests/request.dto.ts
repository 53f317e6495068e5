import type {
  ArrivalBody,
  BatchBody,
  ConformityAsk,
  PreviewBody,
  RequestState,
  ReviewBody,
  SaveRequestBody,
} from '#libs/contract/src/index.js';
import { REQUEST_STATES } from '#libs/contract/src/index.js';
import { FlagInQuery, WordsInQuery } from '../exchange/query.js';
import { Figure, Free, Id, isId, ListOf, OneOf, Part, Parts, Text, When, YesNo } from '../platform/fields.js';

/** Most specimens of one batch. */
const MOST_SPECIMENS = 500;

export class ConformityDto implements ConformityAsk {
  @Text({ max: 80, about: 'Key of the result that has limits.' })
  resultKey: string;

  @Figure({ nullable: true })
  lower: number | null;

  @Figure({ nullable: true })
  upper: number | null;

  @Text({ min: 0, max: 20 })
  unit: string;

  @OneOf(['each', 'mean'])
  of: 'each' | 'mean';

  @OneOf(['simple', 'guarded'])
  rule: 'simple' | 'guarded';

  @Text({ max: 200 })
  specification: string;
}

export class BatchDto implements BatchBody {
  @Text({ min: 0, max: 120, optional: true })
  label?: string;

  @Id()
  methodId: string;

  @Id({ optional: true, nullable: true })
  materialId?: string | null;

  @Figure({ min: 0, max: MOST_SPECIMENS, whole: true })
  specimenCount: number;

  @Free({
    about: 'The ask, figures in N, mm, MPa, °C, mm/min, N·m. Its meaning is checked when the request is submitted.',
  })
  ask: Record<string, unknown>;

  @Free({ optional: true, about: 'The figures as typed, `{ value, unit }` by field.' })
  asTyped?: Record<string, { value: string; unit: string }>;
}

export class SaveRequestDto implements SaveRequestBody {
  @Text({ max: 160 })
  title: string;

  @Text({ min: 0, max: 4000, optional: true })
  purpose?: string;

  @Id()
  teamId: string;

  @When({ optional: true, nullable: true })
  dueAt?: string | null;

  @When({ optional: true, nullable: true, about: 'When the specimens will be handed over.' })
  specimensAt?: string | null;

  @Figure({ min: 0.1, max: 10, optional: true })
  weight?: number;

  @OneOf(['return', 'keep-90-days', 'discard'], { optional: true })
  disposal?: 'return' | 'keep-90-days' | 'discard';

  @Part(() => ConformityDto, { optional: true, nullable: true })
  conformity?: ConformityDto | null;

  @Parts(() => BatchDto, { max: 30 })
  batches: BatchDto[];
}

export class ReviewDto implements ReviewBody {
  @YesNo()
  methodAgreed: boolean;

  @YesNo()
  capabilityShown: boolean;

  @YesNo()
  specimensAgreed: boolean;

  @YesNo()
  disposalAgreed: boolean;

  @YesNo({ optional: true })
  decisionRuleAgreed?: boolean;

  @Text({ min: 0, max: 2000, optional: true })
  differences?: string;

  @Text({ min: 0, max: 2000, optional: true })
  note?: string;
}

export class ReasonDto {
  @Text({ max: 2000 })
  why: string;
}

export class PerhapsReasonDto {
  @Text({ min: 0, max: 2000, optional: true })
  why?: string;
}

export class MessageDto {
  @Text({ max: 4000 })
  body: string;
}

export class ArrivalDto implements ArrivalBody {
  @ListOf(isId, 'ids (UUID)', { type: 'string', format: 'uuid' }, { min: 1, max: MOST_SPECIMENS })
  specimenIds: string[];

  @When({ optional: true })
  arrivedAt?: string;

  @When({ optional: true })
  conditioningFrom?: string;

  @Text({ min: 0, max: 400, optional: true })
  condition?: string;
}

export class ListRequestsDto {
  @WordsInQuery()
  @ListOf(
    (each) => REQUEST_STATES.some((state) => state === each),
    REQUEST_STATES.join(', '),
    { type: 'string' },
    { optional: true },
  )
  state?: RequestState[];

  @FlagInQuery()
  @YesNo({ optional: true, about: 'Only what the person who asks has asked for.' })
  mine?: boolean;

  @Text({ min: 0, max: 100, optional: true })
  q?: string;

  @Text({ max: 200, optional: true })
  cursor?: string;
}

export class PreviewDto implements PreviewBody {
  @Id()
  methodId: string;

  @Id({ optional: true, nullable: true })
  materialId?: string | null;

  @Free()
  ask: Record<string, unknown>;
}
