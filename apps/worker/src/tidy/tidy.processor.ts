import { Injectable } from '@nestjs/common';
import { LabRecords, tidyUp } from '#libs/records/src/index.js';
import type { TaskProcessor } from '../platform/task-processor.js';

/** Forgets what retention allows to forget. Twice is the same as once. */
@Injectable()
export class TidyProcessor implements TaskProcessor<'tidy'> {
  readonly handles = 'tidy';

  constructor(private readonly records: LabRecords) {}

  run(): Promise<Record<string, number>> {
    return tidyUp(this.records.source, this.records.clock.nowMs());
  }
}
