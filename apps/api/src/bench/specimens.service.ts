import type { InvalidBody, JobView, TypedResultsBody } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, LabError, numberProblem, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { announce, readingKey, ResultRepository, SpecimenRepository } from '#libs/records/src/index.js';
import type { NewResult, ResultEntity, SpecimenEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import type { BenchFacts } from './bench-facts.js';
import { dimensionsNeeded } from './dimensions.js';
import { JobActs, refuseOthers, refuseUnless } from './job-acts.js';
import type { AtWork } from './job-acts.js';
import { figureProblem, readTyped, resultsNeeded, strengthFrom } from './typed-results.js';
import type { KeptFigure } from './typed-results.js';

/** What is measured and found on each specimen. Nothing is overwritten: a figure that is corrected gets its next revision. */
@Injectable()
export class SpecimensService {
  constructor(private readonly acts: JobActs) {}

  /** Several readings of each length, mm. What was computed from the old ones is computed again. */
  measure(jobId: string, specimenId: string, dimensions: Record<string, number[]>, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      const facts = await this.open(at, 'lengths are measured');
      const specimen = await new SpecimenRepository(at.manager).lock(at.job.batchId, specimenId);
      refuseIfAny(dimensionProblems(facts, dimensions));
      if (JSON.stringify(specimen.dimensions) === JSON.stringify(dimensions)) return null;
      await new SpecimenRepository(at.manager).change(specimen, { dimensions });
      await this.computeAgain(at, facts, { ...specimen, dimensions });
      const known = { specimenId, label: specimen.label };
      return { kind: 'specimen/measured', before: { ...known, dimensions: specimen.dimensions }, after: { ...known, dimensions }, results: true };
    });
  }

  /** Results as typed, each in the unit in which it was typed. One that differs from what stands there needs a reason. */
  type(jobId: string, specimenId: string, body: TypedResultsBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      const facts = await this.open(at, 'results are entered');
      const specimen = await new SpecimenRepository(at.manager).lock(at.job.batchId, specimenId);
      const figures = figuresOf(facts, body);
      const there = facts.results.filter((row) => row.specimenId === specimenId);
      refuseUnexplained(figures, there, body.why);
      const rows = [...figures.map((figure) => typedRow(at, specimenId, figure, body.why)), ...computedRows(at, facts, specimen, figures, body.why)];
      const kept = await new ResultRepository(at.manager).add(rows);
      if (kept.length === 0 && specimen.fate === 'tested') return null;
      if (specimen.fate !== 'tested') await new SpecimenRepository(at.manager).change(specimen, { fate: 'tested', invalidWhy: null });
      return { kind: 'results/entered', after: { specimenId, label: specimen.label, results: kept.map(said) }, why: body.why ?? null, results: true };
    });
  }

  /** Marked with the reason and kept, never dropped: it counts in no statistics. */
  spoil(jobId: string, specimenId: string, { why, fate = 'invalid' }: InvalidBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      await this.open(at, 'a specimen is marked');
      const specimens = new SpecimenRepository(at.manager);
      const specimen = await specimens.lock(at.job.batchId, specimenId);
      if (specimen.fate === fate && specimen.invalidWhy === why) return null;
      await specimens.change(specimen, { fate, invalidWhy: why });
      const before = { specimenId, label: specimen.label, fate: specimen.fate, invalidWhy: specimen.invalidWhy };
      return { kind: `specimen/${fate}`, before, after: { ...before, fate, invalidWhy: why }, why, results: true };
    });
  }

  /** While it runs for its technician; afterwards a correction, for technician and manager, until the request is closed. */
  private async open(at: AtWork, what: string): Promise<BenchFacts> {
    const corrects = at.job.state === 'done' && at.by.roles.includes('manager');
    if (!corrects) refuseOthers(at);
    refuseUnless(at.job, ['running', 'paused', 'done'], what);
    const facts = await at.facts();
    if (facts.request.state === 'closed') {
      throw new LabError('bench/request-closed', `${facts.request.reference} is closed; its results are not changed any more.`, { state: 'closed' });
    }
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
    if (peak) await new ResultRepository(at.manager).add(computedRows(at, facts, specimen, [peak], 'Lengths were measured again'));
  }
}

/** Bounds of a length at the bench, mm. */
const LENGTH = { unit: 'mm', above: 0, max: 10_000 } as const;
const MOST_READINGS = 20;

function dimensionProblems({ work }: BenchFacts, dimensions: Record<string, number[]>): (FieldProblem | null)[] {
  const needed = dimensionsNeeded(work.method, work.ask).map(({ key }) => key as string);
  return Object.entries(dimensions).flatMap(([key, readings]) => {
    const field = `dimensions.${key}`;
    if (!needed.includes(key)) return [fieldProblem({ field, found: key, allowed: needed.length > 0 ? `one of ${needed.join(', ')}` : 'none: nothing is measured on these', unit: '' })];
    if (!Array.isArray(readings) || readings.length === 0 || readings.length > MOST_READINGS) {
      return [fieldProblem({ field, found: readings, allowed: `1 to ${MOST_READINGS} readings`, unit: '' })];
    }
    return readings.map((value, index) => numberProblem(`${field}[${index}]`, value, LENGTH));
  });
}

/** @throws InvalidInput naming every key, unit and value that cannot be taken */
function figuresOf({ work, trainItems }: BenchFacts, { results }: TypedResultsBody): KeptFigure[] {
  const wanted = resultsNeeded(work.method, work.ask).filter(({ typed }) => typed).map(({ key }) => key);
  const cell = trainItems.find(({ role }) => role === 'load-cell')?.item;
  const details = cell?.kind === 'load-cell' ? cell.details : null;
  const capacity = work.needs.direction === 'torque' ? details?.torqueCapacityNm : details?.capacityN;
  const bounds = { capacity: capacity ?? Infinity, cellTag: cell?.tag ?? 'The cell', loadUnit: work.needs.loadUnit };
  const problems: (FieldProblem | null)[] = [];
  const figures = results.flatMap((typed, at) => {
    if (!wanted.includes(typed.key)) {
      problems.push(fieldProblem({ field: `results[${at}].key`, found: typed.key, allowed: `one of ${wanted.join(', ')}`, unit: '' }));
      return [];
    }
    const figure = readTyped(typed, work.method, at);
    const problem = 'sentence' in figure ? figure : figureProblem(figure, at, bounds);
    problems.push(problem);
    return problem || 'sentence' in figure ? [] : [figure];
  });
  refuseIfAny(problems);
  return figures;
}

/** @throws InvalidInput naming `why` when a figure is corrected without a reason */
function refuseUnexplained(figures: readonly KeptFigure[], there: readonly ResultEntity[], why: string | undefined): void {
  const corrected = figures.filter(({ key, value }) => there.some((row) => row.key === key && row.value !== value));
  if (corrected.length === 0 || why?.trim()) return;
  const allowed = `a reason, because ${corrected.map(({ key }) => key).join(', ')} was entered before`;
  throw new InvalidInput([fieldProblem({ field: 'why', found: why ?? null, allowed, unit: '' })]);
}

function typedRow({ job, by }: AtWork, specimenId: string, { key, value, unit }: KeptFigure, why = ''): NewResult {
  return { specimenId, jobId: job.id, key, value, unit, origin: 'typed', basis: {}, why: why || null, enteredBy: by.id };
}

/** The strength that follows from the peak, when it is wanted and the lengths are there. */
function computedRows({ job, by }: AtWork, { work, results }: BenchFacts, specimen: SpecimenEntity, figures: readonly Pick<KeptFigure, 'key' | 'value'>[], why = ''): NewResult[] {
  const { method, ask } = work;
  const wanted = resultsNeeded(method, ask).some(({ key, typed }) => key === 'peak-stress' && !typed);
  const peak = figures.find(({ key }) => key === 'peak-load')?.value;
  const strength = wanted && peak !== undefined ? strengthFrom(peak, method, ask, specimen.dimensions) : null;
  if (peak === undefined || !strength) return [];
  const again = results.some((row) => row.specimenId === specimen.id && row.key === strength.key);
  return [{ ...strength, specimenId: specimen.id, jobId: job.id, origin: 'computed', why: again ? why || null : null, enteredBy: by.id }];
}

function said({ key, value, unit, revision, origin }: ResultEntity): Record<string, unknown> {
  return { key, value, unit, revision, origin };
}
