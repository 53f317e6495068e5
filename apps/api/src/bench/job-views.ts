import type { JobView } from '#libs/contract/src/index.js';
import { JobRepository } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import { CurrentLab } from '../requests/current-lab.js';
import { readBenchFacts } from './bench-facts.js';
import { jobView } from './job-view.js';

/** Shows a job as it stands now. */
@Injectable()
export class JobViews {
  constructor(
    private readonly records: DataSource,
    private readonly current: CurrentLab,
  ) {}

  /** In one consistent look. The lab comes first: who holds a connection must not wait for another. @throws LabError `job/unknown` */
  async view(jobId: string, by: SignedIn): Promise<JobView> {
    const lab = await this.current.get();
    return this.records.transaction('REPEATABLE READ', async (manager) => {
      const jobs = new JobRepository(manager);
      const facts = await readBenchFacts(manager, await jobs.get(jobId), lab, Date.now());
      return jobView(facts, await jobs.readingsOf(facts.specimens.map(({ id }) => id)), by);
    });
  }
}
