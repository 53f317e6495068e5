import type { ImpactView } from '#libs/contract/src/index.js';
import { lastKnownGood } from '#libs/metrology/src/index.js';
import type { Evidence } from '#libs/metrology/src/index.js';
import { CalibrationRepository, ImpactRepository, ItemRepository, LabRecords } from '#libs/records/src/index.js';
import type { CalibrationEntity, ShiftCheckEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';

/** From when to when an item is in doubt, and why from then. */
export interface Doubt {
  sinceMs: number;
  untilMs: number;
  why: string;
}

/** What an item found wrong has touched: jobs, reports, the people who asked, and what is still to come. */
@Injectable()
export class ImpactService {
  constructor(private readonly records: LabRecords) {}

  /** @param since instead of the last time that it was found good */
  of(itemId: string, since?: string): Promise<ImpactView> {
    return impactOf(this.records.manager, itemId, this.records.clock.now(), since);
  }
}

export async function impactOf(manager: EntityManager, itemId: string, now: Date, since?: string): Promise<ImpactView> {
  const item = await new ItemRepository(manager).get(itemId);
  const calibrations = new CalibrationRepository(manager);
  const doubt = doubtOf(await calibrations.of(itemId), await calibrations.shiftChecksOf(itemId, 500), now.getTime());
  const from = new Date(since ?? doubt.sinceMs);
  const impact = new ImpactRepository(manager);
  const jobs = await impact.jobs(itemId, from, new Date(Math.max(doubt.untilMs, from.getTime())));
  const requestIds = [...new Set(jobs.map(({ requestId }) => requestId))];
  const upcoming = await impact.upcoming([itemId], now);
  return {
    item: { id: item.id, tag: item.tag, name: item.name },
    since: from.toISOString(),
    sinceWhy: since ? 'The date that was asked for' : doubt.why,
    until: new Date(doubt.untilMs).toISOString(),
    jobs: jobs.map(({ finishedAt, ...job }) => ({ ...job, finishedAt: finishedAt?.toISOString() ?? null })),
    reports: await impact.reports(requestIds),
    people: await impact.requesters(requestIds),
    upcomingJobs: upcoming.map(({ jobId, reference, startsAt }) => ({
      id: jobId,
      reference,
      startsAt: startsAt.toISOString(),
    })),
  };
}

/**
 * When an item is in doubt: from the last time that it was found good before it was last found wrong (by a calibration, when it was
 * one that found it wrong), until then when a calibration put it right, else until now. Without a finding, from the last time that it was found good until now.
 */
export function doubtOf(
  calibrations: readonly CalibrationEntity[],
  checks: readonly ShiftCheckEntity[],
  nowMs: number,
): Doubt {
  const wrongCalibrations = calibrations.filter(({ asFound }) => asFound === 'out-of-tolerance');
  const findings = [
    ...wrongCalibrations.map(({ performedAt }) => ({ atMs: performedAt.getTime(), byCalibration: true })),
    ...checks.filter(({ passed }) => !passed).map(({ at }) => ({ atMs: at.getTime(), byCalibration: false })),
  ];
  const finding = findings.sort((a, b) => b.atMs - a.atMs)[0];
  const evidence: Evidence[] = [
    // Whatever a calibration found, it left the item right.
    ...calibrations.map(({ performedAt }) => ({
      atMs: performedAt.getTime(),
      kind: 'calibration' as const,
      good: true,
    })),
    // A check looks at one force: it cannot clear what a calibration found anywhere in the range.
    ...(finding?.byCalibration ? [] : checks).map(({ at, passed }) => ({
      ...{ atMs: at.getTime(), kind: 'shift-check' as const, good: passed },
    })),
  ];
  const last = lastKnownGood(evidence, finding?.atMs ?? nowMs);
  const why = last
    ? `Last found good by ${last.kind === 'calibration' ? 'calibration' : 'shift check'}`
    : 'Never found good before';
  return { sinceMs: last?.atMs ?? 0, untilMs: finding?.byCalibration ? finding.atMs : nowMs, why };
}
