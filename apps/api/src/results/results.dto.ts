import { Text } from '../platform/fields.js';

export class HistoryDto {
  @Text({ max: 80, about: 'Code of the method.' })
  method!: string;

  @Text({ max: 80, optional: true, about: 'Code of the material; all when left out.' })
  material?: string;

  @Text({ max: 80, about: 'Key of the result, e.g. `peak-stress`.' })
  key!: string;

  @Text({ max: 60, optional: true, about: 'Tag of a load cell: only jobs that ran on it.' })
  cell?: string;
}
