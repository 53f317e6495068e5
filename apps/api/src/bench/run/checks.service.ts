import type { JobView, ShiftCheckBody, TickBody } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, numberProblem } from '#libs/errors/src/index.js';
import { judgeShiftCheck } from '#libs/metrology/src/index.js';
import type { ShiftCheckOutcome } from '#libs/metrology/src/index.js';
import { ShiftCheckRepository } from '#libs/records/src/index.js';
import { findUnit, formatNumber, formatQuantity, toInternal, unitsOf } from '#libs/units/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import type { BenchFacts } from '../job/bench-facts.js';
import { JobActs, refuseOthers, refuseUnless } from '../job/job-acts.js';
import type { AtWork, Done } from '../job/job-acts.js';
import { moved, openFault } from './leave.js';

/** The checks before the first specimen. */
@Injectable()
export class ChecksService {
  constructor(private readonly acts: JobActs) {}

  /** Ticks a check at the frame; one with a value is held against its limit. */
  tick(jobId: string, body: TickBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.checks[body.key] && at.job.checks[body.key]!.value === body.value) return null;
      refuseUnless(at.job, ['rigged'], 'checks are ticked');
      const facts = await at.facts();
      refuseBadTick(facts, body);
      const { key, ...said } = body;
      await at.jobs.change(at.job, {
        checks: { ...at.job.checks, [key]: { at: new Date(facts.nowMs).toISOString(), by: by.id, ...said } },
      });
      return { kind: 'job/checked', after: { ...body } };
    });
  }

  /** Holds a reading of the cell against a known load. A cell that fails is out of use at once, and the job is blocked. */
  shiftCheck(jobId: string, body: ShiftCheckBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      refuseUnless(at.job, ['rigged', 'running', 'paused'], 'the cell is checked');
      const facts = await at.facts();
      const check = readingsOf(facts, body);
      const tolerancePct = facts.settings.shiftCheckTolerancePct;
      const outcome = judgeShiftCheck({ reference: check.reference, reading: check.reading, tolerancePct });
      await new ShiftCheckRepository(at.manager).add({
        ...{ cellId: body.cellId, frameId: facts.frameId!, jobId: at.job.id, ...check, tolerancePct },
        ...{ errorPct: outcome.errorPct, passed: outcome.passed, technicianId: by.id, at: new Date(facts.nowMs) },
      });
      const found = { cellId: body.cellId, ...check, errorPct: outcome.errorPct, tolerancePct, passed: outcome.passed };
      return outcome.passed ? { kind: 'job/shift-checked', after: found } : this.takeOut(at, facts, found, outcome);
    });
  }

  private async takeOut(
    at: AtWork,
    facts: BenchFacts,
    found: Record<string, unknown> & { cellId: string },
    outcome: ShiftCheckOutcome,
  ): Promise<Done> {
    const cell = facts.trainItems.find(({ item }) => item.id === found.cellId)!.item;
    const tolerance = formatNumber(facts.settings.shiftCheckTolerancePct);
    const what = `Shift check failed: ${cell.tag} read ${formatNumber(outcome.errorPct, 3)} % off on ${facts.frame!.tag}, allowed is ${tolerance} %`;
    await openFault(at, cell.id, what);
    await at.jobs.move(at.job, 'block', { why: what });
    return moved(at.job, 'blocked', { failedItemId: cell.id, shiftCheck: found }, what);
  }
}

/** @throws InvalidInput naming key or value, with what is allowed */
function refuseBadTick({ checksAsked }: BenchFacts, { key, value }: TickBody): void {
  const byHand = checksAsked.filter(({ kind }) => kind !== 'shift-check');
  const check = byHand.find((each) => each.key === key);
  if (!check) {
    throw new InvalidInput([
      fieldProblem({
        field: 'key',
        found: key,
        allowed: `one of ${byHand.map((each) => each.key).join(', ')}`,
        unit: '',
      }),
    ]);
  }
  if (check.kind !== 'value') return;
  const problem = numberProblem('value', value, {
    unit: check.unit ?? '',
    min: 0,
    ...(check.max === undefined ? {} : { max: check.max }),
  });
  if (problem) throw new InvalidInput([fieldProblem(problem, 'Align the train again and repeat the measurement.')]);
}

/** Share of a cell's capacity from which a reference says something about it; common practice, no source. */
const LEAST_SHARE = 0.005;

/** Reference and reading in N or N·m. @throws InvalidInput naming cell, unit or figure */
function readingsOf(
  { trainItems }: BenchFacts,
  body: ShiftCheckBody,
): { reference: number; reading: number; unit: string } {
  const cell = trainItems.find(({ role }) => role === 'load-cell')?.item;
  if (!cell || cell.id !== body.cellId || cell.kind !== 'load-cell') {
    throw new InvalidInput([
      fieldProblem({
        field: 'cellId',
        found: body.cellId,
        allowed: `the cell of this train${cell ? `, ${cell.tag}` : ''}`,
        unit: '',
      }),
    ]);
  }
  const torque = cell.details.capacityN === 0;
  const unit = findUnit(body.unit, torque ? 'torque' : 'force');
  if (!unit) {
    throw new InvalidInput([
      fieldProblem({
        field: 'unit',
        found: body.unit,
        allowed: `one of ${unitsOf(torque ? 'torque' : 'force').join(', ')}`,
        unit: '',
      }),
    ]);
  }
  const kept = torque ? 'N·m' : 'N';
  const capacity = torque ? cell.details.torqueCapacityNm : cell.details.capacityN;
  const [reference, reading] = [toInternal(body.reference, unit), toInternal(body.reading, unit)];
  const size = Math.abs(reference);
  if (size < capacity * LEAST_SHARE || size > capacity) {
    const allowed = `${formatQuantity(capacity * LEAST_SHARE, unit)} to ${formatQuantity(capacity, unit)}`;
    const advice = `Use a reference load that ${cell.tag} is rated for and can tell from nothing.`;
    throw new InvalidInput([fieldProblem({ field: 'reference', found: body.reference, allowed, unit: '' }, advice)]);
  }
  return { reference, reading, unit: kept };
}
