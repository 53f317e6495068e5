import type { JobView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { Lab } from '#libs/matching/src/index.js';
import { JobRepository, LabRecords, labOf } from '#libs/records/src/index.js';
import type { Act, Happening, JobEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import { CurrentLab } from '../platform/current-lab.js';
import { readBenchFacts } from './bench-facts.js';
import type { BenchFacts } from './bench-facts.js';
import { JobViews } from './job-views.js';

/** One act on one job; nobody else changes the job meanwhile. */
export interface AtWork extends Act {
  jobs: JobRepository;
  job: JobEntity;
  by: SignedIn;
  /** Everything that the bench decides from, as this transaction sees it. */
  facts(): Promise<BenchFacts>;
  /** The same with the register read anew, row by row: for what must never rest on anything kept. */
  freshFacts(): Promise<BenchFacts>;
}

/** What goes into the record. */
export type Done = Happening & {
  /** Whether results of the request changed. */
  results?: boolean;
};

/** Everything that is done to a job goes this way: one transaction with guard, rows, record, and word to planner and screens. */
@Injectable()
export class JobActs {
  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
    private readonly views: JobViews,
  ) {}

  /**
   * @param change null when there was nothing to do any more: a second tap, an answer that got lost
   * @returns the job as it stands then
   */
  async do(jobId: string, by: SignedIn, change: (at: AtWork) => Promise<Done | null>): Promise<JobView> {
    await this.records.act(by.id, async (act) => {
      const { manager } = act;
      const jobs = new JobRepository(manager);
      const job = await jobs.lock(jobId);
      const nowMs = () => act.now().getTime();
      const facts = async (lab: Promise<Lab>) => readBenchFacts(manager, job.id, await lab, nowMs());
      const done = await change({
        ...act,
        jobs,
        job,
        by,
        facts: () => facts(this.current.within(manager)),
        freshFacts: () => facts(labOf(manager, nowMs())),
      });
      if (!done) return act.nothing(undefined);
      const { results = false, ...happened } = done;
      await act.record({ ...happened, subjectId: job.id });
      if (results) await act.tell('results', job.requestId);
    });
    return this.views.view(jobId, by);
  }
}

/** @throws LabError `bench/not-yours` for anybody but the technician who took the job */
export function refuseOthers({ job, by }: Pick<AtWork, 'job' | 'by'>): void {
  if (job.technicianId === by.id) return;
  const whose = job.technicianId === null ? 'Nobody has taken it' : 'Somebody else has taken it';
  throw new LabError(
    'bench/not-yours',
    `${job.reference} is not yours to run. ${whose}. Take your next job at the bench.`,
    { state: job.state },
  );
}

/** @throws LabError `bench/wrong-moment` for a job in another state, with where it is and what may be done then */
export function refuseUnless(job: JobEntity, states: readonly string[], what: string): void {
  if (states.includes(job.state)) return;
  throw new LabError(
    'bench/wrong-moment',
    `${job.reference} is ${job.state}; ${what} while it is ${states.join(' or ')}.`,
    {
      state: job.state,
      allowed: states,
    },
  );
}
