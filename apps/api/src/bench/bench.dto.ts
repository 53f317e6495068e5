import type {
  BlockBody,
  ConfirmBody,
  CurveConfirmBody,
  DimensionsBody,
  FinishBody,
  InvalidBody,
  MissingWhy,
  ShiftCheckBody,
  StandInBody,
  TakeBody,
  TickBody,
  TypedResultsBody,
  WhyBody,
} from '#libs/contract/src/index.js';
import { Figure, Free, Id, OneOf, Part, Parts, Text } from '../platform/fields.js';

export class TakeDto implements TakeBody {
  @Id({ optional: true, about: 'Only a job that is planned on this frame.' })
  frameId?: string;
}

export class ConfirmDto implements ConfirmBody {
  @Text({ max: 60 })
  tag!: string;
}

export class StandInDto implements StandInBody {
  @Id()
  itemId!: string;

  @Text({ max: 60 })
  tag!: string;
}

export class ShiftCheckDto implements ShiftCheckBody {
  @Id()
  cellId!: string;

  @Figure({ about: 'The known load, in `unit`.' })
  reference!: number;

  @Figure({ about: 'What the frame showed, in `unit`.' })
  reading!: number;

  @Text({ max: 20 })
  unit!: string;
}

export class TickDto implements TickBody {
  @Text({ max: 60 })
  key!: string;

  @Figure({ optional: true })
  value?: number;

  @Text({ max: 500, optional: true })
  note?: string;
}

export class WhyDto implements WhyBody {
  @Text({ min: 3, max: 500 })
  why!: string;
}

export class BlockDto extends WhyDto implements BlockBody {
  @Id({ optional: true, about: 'The frame or the item of the train that failed.' })
  itemId?: string;
}

export class InvalidDto extends WhyDto implements InvalidBody {
  @OneOf(['invalid', 'not-tested', 'valid'], { optional: true })
  fate?: 'invalid' | 'not-tested' | 'valid';
}

export class DimensionsDto implements DimensionsBody {
  @Free({ about: 'Readings of each length, mm, by its key.' })
  dimensions!: Record<string, number[]>;
}

export class TypedResultDto {
  @Text({ max: 60 })
  key!: string;

  @Figure()
  value!: number;

  @Text({ min: 0, max: 20 })
  unit!: string;
}

export class MissingWhyDto implements MissingWhy {
  @Text({ max: 60 })
  key!: string;

  @Text({ min: 3, max: 500, about: 'Why there is no figure.' })
  why!: string;
}

export class MissingOfDto extends MissingWhyDto {
  @Id({ optional: true, about: 'The specimen; every one that lacks the result when it is left out.' })
  specimenId?: string;
}

export class TypedResultsDto implements TypedResultsBody {
  @Parts(() => TypedResultDto, { max: 50 })
  results!: TypedResultDto[];

  @Text({ max: 500, optional: true, about: 'Needed when a result is corrected.' })
  why?: string;

  @Parts(() => MissingWhyDto, { max: 50, optional: true, about: 'Results that this specimen has no figure of.' })
  missing?: MissingWhyDto[];
}

export class CurveConfirmDto implements CurveConfirmBody {
  @Id()
  fileId!: string;

  @Free({ about: 'As proposed, or as corrected by a person.' })
  format!: Record<string, unknown>;
}

export class ConditionsDto {
  @Figure({ unit: '°C', min: -200, max: 1200, optional: true })
  temperatureC?: number;

  @Figure({ unit: '%', min: 0, max: 100, optional: true })
  humidityPct?: number;

  @Text({ min: 0, max: 2000, optional: true })
  remarks?: string;

  @Text({ min: 0, max: 2000, optional: true })
  deviations?: string;
}

export class FinishDto implements FinishBody {
  @Part(() => ConditionsDto)
  conditions!: ConditionsDto;

  @Text({ min: 3, max: 500, optional: true, about: 'Why the specimens that are still open were not tested.' })
  notTestedWhy?: string;

  @Parts(() => MissingOfDto, { max: 500, optional: true, about: 'Results that were asked for and have no figure.' })
  missing?: MissingOfDto[];
}
