import type { JobView } from '#libs/contract/src/index.js';
import { LabRecords } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import { CurrentLab } from '../../platform/current-lab.js';
import type { Asked } from '../../platform/current-lab.js';
import { readBenchFacts } from './bench-facts.js';
import { jobView } from './job-view.js';

/** Shows a job as it stands now. */
@Injectable()
export class JobViews {
  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
  ) {}

  /**
   * @param asked from when on its lab may be; now, unless told otherwise, so that what was just done is seen
   * @throws LabError `job/unknown`
   */
  async view(jobId: string, by: SignedIn, asked?: Asked): Promise<JobView> {
    const lab = await this.current.get(asked);
    return jobView(await readBenchFacts(this.records.manager, jobId, lab, this.records.clock.nowMs()), by);
  }
}
