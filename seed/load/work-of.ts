import type { Method } from '#libs/matching/src/index.js';
import type { NumberedRequest } from '../northmoor/all-requests.js';
import type { DemoBatch, DemoJob } from '../northmoor/demo-request.js';
import type { JobTimes } from './job-times.js';

/** A batch with what became of it so far. */
export interface WorkOf {
  demo: NumberedRequest;
  batch: DemoBatch;
  /** E.g. `J-2031-1`. */
  reference: string;
  method: Method;
  times: JobTimes;
  job: DemoJob;
}
