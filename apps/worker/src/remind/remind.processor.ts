import { LabRecords, remind } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { TaskProcessor } from '../platform/task-processor.js';

/** Tells of what fell due by itself. Nobody is told of the same twice. */
@Injectable()
export class RemindProcessor implements TaskProcessor<'remind'> {
  readonly handles = 'remind';

  constructor(private readonly records: LabRecords) {}

  run(): Promise<{ overdue: number }> {
    return remind(this.records);
  }
}
