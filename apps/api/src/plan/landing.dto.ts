import { Figure, Free, Id, Parts, When } from '../platform/fields.js';

export class LandingBatchDto {
  @Id()
  methodId!: string;

  @Id({ optional: true, nullable: true })
  materialId?: string | null;

  @Figure({ whole: true, min: 1, max: 500 })
  specimenCount!: number;

  @Free({ about: 'What matching is asked, as in a request.' })
  ask!: Record<string, unknown>;
}

export class LandingDto {
  @Parts(() => LandingBatchDto, { max: 20 })
  batches!: LandingBatchDto[];

  @When({ optional: true, nullable: true })
  dueAt?: string | null;

  @When({ optional: true, nullable: true })
  specimensAt?: string | null;
}
