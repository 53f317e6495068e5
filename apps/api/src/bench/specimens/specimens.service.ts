import { dimensionProblems, requestOpen } from '#libs/bench/src/index.js';
import type { InvalidBody, JobView, TypedResultsBody } from '#libs/contract/src/index.js';
import { refuseIfAny } from '#libs/errors/src/index.js';
import { announce, readingKey, ResultRepository, SpecimenRepository } from '#libs/records/src/index.js';
import type { ResultEntity, SpecimenEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import type { BenchFacts } from '../job/bench-facts.js';
import { JobActs, refuseOthers, refuseUnless } from '../job/job-acts.js';
import type { AtWork } from '../job/job-acts.js';
import { refuseAny } from '../job/refuse.js';
import { refuseUnknown, withReasons } from './missing.js';
import { computedRows, typedRows } from './result-rows.js';
import { dimensionKeys } from './dimensions-of.js';
import { figuresOf } from './typed-figures.js';

/** What is measured and found on each specimen. Nothing is overwritten: a figure that is corrected gets its next revision. */
@Injectable()
export class SpecimensService {
  constructor(private readonly acts: JobActs) {}

  /** Several readings of each length, mm. What was computed from the old ones is computed again. */
  measure(jobId: string, specimenId: string, dimensions: Record<string, number[]>, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      const facts = await this.open(at, 'lengths are measured');
      const specimen = await new SpecimenRepository(at.manager).lock(at.job.batchId, specimenId);
      refuseIfAny(dimensionProblems(dimensionKeys(facts.work), dimensions));
      if (JSON.stringify(specimen.dimensions) === JSON.stringify(dimensions)) return null;
      await new SpecimenRepository(at.manager).change(specimen, { dimensions });
      await this.computeAgain(at, facts, { ...specimen, dimensions });
      const known = { specimenId, label: specimen.label };
      return {
        kind: 'specimen/measured',
        before: { ...known, dimensions: specimen.dimensions },
        after: { ...known, dimensions },
        results: true,
      };
    });
  }

  /** Results as typed, each in the unit in which it was typed. One that differs from what stands there needs a reason. */
  type(jobId: string, specimenId: string, body: TypedResultsBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      const facts = await this.open(at, 'results are entered');
      const specimens = new SpecimenRepository(at.manager);
      const specimen = await specimens.lock(at.job.batchId, specimenId);
      refuseUnknown(facts, body.missing ?? []);
      const figures = figuresOf(facts, specimen, body);
      const rows = [
        ...typedRows(at, specimen, figures, body.why),
        ...computedRows(at, facts, specimen, figures, body.why),
      ];
      const kept = await new ResultRepository(at.manager).add(rows, at.now());
      const fresh = specimen.fate === 'expected' || specimen.fate === 'arrived';
      const after = { ...facts, results: [...facts.results, ...kept] };
      const missingWhy = withReasons(after, { ...specimen, fate: 'tested' }, body.missing ?? []);
      if (kept.length === 0 && !fresh && !missingWhy) return null;
      const set = { ...(fresh ? { fate: 'tested' as const } : {}), ...(missingWhy ? { missingWhy } : {}) };
      if (fresh || missingWhy) await specimens.change(specimen, set);
      return {
        kind: 'results/entered',
        after: { specimenId, label: specimen.label, results: kept.map(said), ...(missingWhy ? { missingWhy } : {}) },
        why: body.why ?? null,
        results: true,
      };
    });
  }

  /** Marked with the reason and kept, never dropped: it counts in no statistics, until somebody says why it is valid after all. */
  mark(
    jobId: string,
    specimenId: string,
    { why, fate: said = 'invalid' }: InvalidBody,
    by: SignedIn,
  ): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      const { results } = await this.open(at, 'a specimen is marked');
      const specimens = new SpecimenRepository(at.manager);
      const specimen = await specimens.lock(at.job.batchId, specimenId);
      const found = results.some((row) => row.specimenId === specimenId);
      const fate = said === 'valid' ? (found ? 'tested' : 'arrived') : said;
      const invalidWhy = said === 'valid' ? null : why;
      if (specimen.fate === fate && specimen.invalidWhy === invalidWhy) return null;
      await specimens.change(specimen, { fate, invalidWhy });
      const before = { specimenId, label: specimen.label, fate: specimen.fate, invalidWhy: specimen.invalidWhy };
      return { kind: `specimen/${said}`, before, after: { ...before, fate, invalidWhy }, why, results: true };
    });
  }

  /** While it runs for its technician; afterwards a correction, for technician and manager, until the request is closed. */
  private async open(at: AtWork, what: string): Promise<BenchFacts> {
    const corrects = at.job.state === 'done' && at.by.roles.includes('manager');
    if (!corrects) refuseOthers(at);
    refuseUnless(at.job, ['running', 'paused', 'done'], what);
    const facts = await at.facts();
    refuseAny([requestOpen(facts.request)]);
    return facts;
  }

  private async computeAgain(at: AtWork, facts: BenchFacts, specimen: SpecimenEntity): Promise<void> {
    const there = facts.results.filter((row) => row.specimenId === specimen.id);
    const peak = there.find(({ key, origin }) => key === 'peak-load' && origin === 'typed');
    const curve = facts.curves.find((row) => row.specimenId === specimen.id);
    if (curve) {
      const payload = { fileId: curve.fileId, jobId: at.job.id, specimenId: specimen.id, byId: at.by.id };
      await announce(at.manager, 'read-curves', payload, { key: readingKey(specimen.id) });
    }
    if (peak)
      await new ResultRepository(at.manager).add(
        computedRows(at, facts, specimen, [peak], 'Lengths were measured again'),
        at.now(),
      );
  }
}

function said({ key, value, unit, revision, origin }: ResultEntity): Record<string, unknown> {
  return { key, value, unit, revision, origin };
}
