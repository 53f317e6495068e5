import type { JobView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { Lab } from '#libs/matching/src/index.js';
import { JobRepository, labOf, notify, recordAct } from '#libs/records/src/index.js';
import type { JobEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import { CurrentLab } from '../platform/current-lab.js';
import { readBenchFacts } from './bench-facts.js';
import type { BenchFacts } from './bench-facts.js';
import { JobViews } from './job-views.js';

/** One act on one job, within its transaction; nobody else changes the job meanwhile. */
export interface AtWork {
  manager: EntityManager;
  jobs: JobRepository;
  job: JobEntity;
  by: SignedIn;
  /** Everything that the bench decides from, as this transaction sees it. */
  facts(): Promise<BenchFacts>;
  /** The same with the register read anew, row by row: for what must never rest on anything kept. */
  freshFacts(): Promise<BenchFacts>;
}

/** What goes into the record. */
export interface Done {
  kind: string;
  before?: Record<string, unknown> | null;
  after?: Record<string, unknown> | null;
  why?: string | null;
  /** Whether plans are made from what changed. */
  planning?: boolean;
  /** Whether results of the request changed. */
  results?: boolean;
}

/** Everything that is done to a job goes this way: one transaction with guard, rows, record, and word to planner and screens. */
@Injectable()
export class JobActs {
  constructor(
    private readonly records: DataSource,
    private readonly current: CurrentLab,
    private readonly views: JobViews,
  ) {}

  /**
   * @param act null when there was nothing to do any more: a second tap, an answer that got lost
   * @returns the job as it stands then
   */
  async do(jobId: string, by: SignedIn, act: (at: AtWork) => Promise<Done | null>): Promise<JobView> {
    await this.records.transaction(async (manager) => {
      const jobs = new JobRepository(manager);
      const job = await jobs.lock(jobId);
      const facts = async (lab: Promise<Lab>) => readBenchFacts(manager, job.id, await lab, Date.now());
      const done = await act({
        ...{ manager, jobs, job, by },
        facts: () => facts(this.current.within(manager)),
        freshFacts: () => facts(labOf(manager, Date.now())),
      });
      if (!done) return;
      const { results = false, ...entry } = done;
      await recordAct(manager, { actorId: by.id, subjectKind: 'job', subjectId: job.id, live: 'jobs', ...entry });
      if (results) await notify(manager, { topic: 'results', id: job.requestId });
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
