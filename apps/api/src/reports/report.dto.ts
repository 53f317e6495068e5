import type { ReportRemarks } from '#libs/contract/src/index.js';
import { Figure, Text } from '../platform/fields.js';

const LONG = { min: 0, max: 4_000, optional: true } as const;

export class RemarksDto implements ReportRemarks {
  @Text({ max: 120, optional: true })
  title?: string;

  @Text({ ...LONG, about: 'Deviations from the method, one a line; those noted at the bench are added by themselves.' })
  deviations?: string;

  @Text({ ...LONG, about: 'Opinions and interpretations, one a line; marked as such in the report.' })
  opinions?: string;

  @Text(LONG)
  sampling?: string;

  @Text({ ...LONG, about: 'Which results came from an external provider.' })
  external?: string;
}

export class AmendDto {
  @Text({ min: 10, max: 2_000, about: 'What changes and why; printed in the new revision.' })
  why!: string;
}

export class ListReportsDto {
  @Text({ max: 100, optional: true })
  q?: string;

  @Figure({ whole: true, min: 1, max: 200, optional: true })
  limit?: number;
}

export class VerifyDto {
  @Figure({ whole: true, min: 1, max: 999, optional: true })
  revision?: number;

  @Text({ min: 64, max: 64, pattern: /^[0-9a-f]{64}$/i, allowed: 'a SHA-256 of 64 hexadecimal digits', optional: true })
  hash?: string;
}
