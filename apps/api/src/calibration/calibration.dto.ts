import type {
  CalibratedRangeView,
  ExtensionReadingsBody,
  ForceReadingsBody,
  RecordCalibrationBody,
} from '#libs/contract/src/index.js';
import type { CalibratedQuantity } from '#libs/matching/src/index.js';
import { CALIBRATED_QUANTITIES, DIRECTIONS } from '#libs/matching/src/index.js';
import { DayOrWhen, Figure, Id, ListOf, OneOf, Part, Parts, Text, When } from '../platform/fields.js';

const isFigure = (value: unknown): boolean => typeof value === 'number' && Number.isFinite(value);

export class RangeDto implements CalibratedRangeView {
  @OneOf(CALIBRATED_QUANTITIES)
  direction: CalibratedQuantity;

  @Text({ max: 20, nullable: true })
  className: string | null;

  @Figure()
  from: number;

  @Figure()
  to: number;

  @OneOf(['N', 'mm', 'N·m', '°C', 'mm/min'])
  unit: CalibratedRangeView['unit'];
}

export class ForceStepDto {
  @Figure({ above: 0 })
  nominal: number;

  @ListOf(isFigure, 'numbers', { type: 'number' }, { min: 3, max: 3 })
  runs: [number, number, number];

  @Figure({ optional: true, nullable: true })
  falling?: number | null;
}

export class ForceReadingsDto implements ForceReadingsBody {
  @OneOf(DIRECTIONS)
  direction: 'tension' | 'compression' | 'torque';

  @Text({ max: 12, about: 'Unit of every figure, e.g. kN.' })
  unit: string;

  @Figure({ above: 0 })
  capacity: number;

  @Figure({ above: 0 })
  resolution: number;

  @Figure()
  zeroResidual: number;

  @OneOf(['indicated', 'true'], { optional: true })
  held?: 'indicated' | 'true';

  @Parts(() => ForceStepDto, { max: 60 })
  steps: ForceStepDto[];
}

export class ExtensionStepDto {
  @Figure({ unit: 'mm', above: 0 })
  referenceMm: number;

  @ListOf(isFigure, 'numbers', { type: 'number' }, { min: 2, max: 2 })
  runs: [number, number];
}

export class ExtensionReadingsDto implements ExtensionReadingsBody {
  @Text({ max: 12, about: 'Unit of the runs, e.g. µm.' })
  unit: string;

  @Figure({ unit: 'mm', above: 0, max: 10_000 })
  gaugeLengthNominalMm: number;

  @Figure({ unit: 'mm', above: 0, max: 10_000 })
  gaugeLengthMeasuredMm: number;

  @Figure({ unit: 'mm', above: 0, max: 100 })
  resolutionMm: number;

  @Parts(() => ExtensionStepDto, { max: 60 })
  steps: ExtensionStepDto[];
}

export class EvaluateDto {
  @Text({ max: 60, about: 'E.g. ISO 7500-1, ISO 9513, ASTM E83.' })
  standard: string;

  @Parts(() => ForceReadingsDto, { max: 3, optional: true })
  forceReadings?: ForceReadingsDto[];

  @Part(() => ExtensionReadingsDto, { optional: true })
  extensionReadings?: ExtensionReadingsDto;
}

export class RecordCalibrationDto extends EvaluateDto implements RecordCalibrationBody {
  @Text({ max: 80 })
  certificateNumber: string;

  @Text({ max: 120 })
  laboratory: string;

  @DayOrWhen({ about: 'The day of the certificate, or an instant.' })
  performedAt: string;

  @DayOrWhen({ optional: true })
  dueAt?: string;

  @Parts(() => RangeDto, { max: 20, optional: true })
  ranges?: RangeDto[];

  @OneOf(['within', 'out-of-tolerance', 'not-recorded'])
  asFound: 'within' | 'out-of-tolerance' | 'not-recorded';

  @Id({ optional: true, nullable: true })
  certificateFileId?: string | null;

  @Id({ optional: true, nullable: true })
  replaces?: string | null;
}

export class SinceDto {
  @When({ optional: true, about: 'Search from here on, and not from the last time it was found good.' })
  since?: string;
}

export class OpenNonconformityDto {
  @Text({ max: 4000 })
  what: string;

  @When({ optional: true })
  since?: string;
}

export class DecideNonconformityDto {
  @OneOf(['open', 'closed'])
  state: 'open' | 'closed';

  @Text({ max: 4000, about: 'What was decided, and what was done about what it touched.' })
  decision: string;
}

export class DueDto {
  @Text({ max: 4, pattern: /^\d{1,4}$/, allowed: 'a whole number of days, 0 to 9999', optional: true })
  days?: string;
}
