import { randomUUID } from 'node:crypto';
import type {
  CalibrationView,
  DueLine,
  EvaluationView,
  ImpactView,
  RecordCalibrationBody,
} from '#libs/contract/src/index.js';
import { refuseIfAny } from '#libs/errors/src/index.js';
import { calibrationDueAt, dueForecast } from '#libs/metrology/src/index.js';
import type { DueForecast, ForecastJob } from '#libs/metrology/src/index.js';
import {
  CalibrationRepository,
  ImpactRepository,
  ItemRepository,
  LabRecords,
  labSettings,
} from '#libs/records/src/index.js';
import type { CalibrationEntity, ItemEntity, UpcomingJob } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import { calibrationView } from '../register/item-view.js';
import { enteringProblems, hasReadings } from './entering-problems.js';
import { evaluate } from './evaluate.js';
import { impactOf } from './impact.service.js';
import { dueMsOf, performedMsOf } from './calibration-days.js';
import { itemFacts } from './standing.js';

/** A calibration that was entered; one that found the item out of tolerance comes with what it touched. */
export interface EnteredCalibration {
  calibration: CalibrationView;
  impact: ImpactView | null;
}

/** Calibrations as they are entered, and what falls due. */
@Injectable()
export class CalibrationService {
  constructor(private readonly records: LabRecords) {}

  /** Keeps a calibration, with class and range as the certificate says or as its readings give. @throws InvalidInput by field */
  enter(itemId: string, body: RecordCalibrationBody, by: SignedIn): Promise<EnteredCalibration> {
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const item = await new ItemRepository(manager).get(itemId);
      const { timeZone } = await labSettings(manager);
      const nowMs = now().getTime();
      const performedMs = performedMsOf(body.performedAt, timeZone, nowMs);
      refuseIfAny(await enteringProblems(manager, item, body, { performedMs, zone: timeZone, nowMs }));
      const evaluation = hasReadings(body) ? evaluate(body) : null;
      const performedAt = new Date(performedMs);
      const row = {
        ...{ id: randomUUID(), itemId, standard: body.standard, certificateNumber: body.certificateNumber },
        ...{
          laboratory: body.laboratory,
          performedAt,
          validFrom: performedAt,
          dueAt: dueOf(item, body, performedMs, timeZone),
        },
        ranges: evaluation?.ranges ?? body.ranges!,
        asFound: body.asFound,
        readings: evaluation && readingsOf(body, evaluation),
        ...{ certificateFileId: body.certificateFileId ?? null, replaces: body.replaces ?? null, enteredBy: by.id },
      };
      const calibrations = new CalibrationRepository(manager);
      await calibrations.add({ ...row, enteredAt: now() });
      await record({
        kind: 'item/calibrated',
        subjectId: itemId,
        after: { ...row },
      });
      const kept = await calibrations.get(row.id);
      const impact = body.asFound === 'out-of-tolerance' ? await impactOf(manager, itemId, now()) : null;
      return { calibration: calibrationView(kept, () => ({ id: by.id, name: by.name })), impact };
    });
  }

  /** What is overdue or falls due, the most urgent first, with the planned jobs that it would stop. */
  async due(days: number): Promise<DueLine[]> {
    const { manager } = this.records;
    const nowMs = this.records.clock.nowMs();
    const items = (await new ItemRepository(manager).list()).filter(({ needsCalibration }) => needsCalibration);
    const calibrations = await new CalibrationRepository(manager).ofAll(items.map(({ id }) => id));
    const upcoming = await new ImpactRepository(manager).upcoming(
      items.map(({ id }) => id),
      new Date(nowMs),
    );
    const { calibrationNoticeDays } = await labSettings(manager);
    const byTag = [...items].sort((a, b) => a.tag.localeCompare(b.tag));
    const facts = byTag.map((item) => ({
      id: item.id,
      ...itemFacts(
        item,
        calibrations.filter(({ itemId }) => itemId === item.id),
      ),
    }));
    const lines = dueForecast(facts, jobsOf(upcoming), nowMs, days, calibrationNoticeDays);
    return lines.map((line) =>
      dueLine(
        line,
        items.find(({ id }) => id === line.itemId)!,
        upcoming,
      ),
    );
  }
}

/** Planned jobs, each once with its items. */
function jobsOf(upcoming: readonly UpcomingJob[]): ForecastJob[] {
  const ids = [...new Set(upcoming.map(({ jobId }) => jobId))];
  return ids.map((id) => {
    const own = upcoming.filter(({ jobId }) => jobId === id);
    const { startsAt, endsAt } = own[0]!;
    return { id, itemIds: own.map(({ itemId }) => itemId), startMs: startsAt.getTime(), endMs: endsAt.getTime() };
  });
}

function dueLine(
  { itemId, status, dueMs, stops }: DueForecast,
  { id, tag, name, kind, registeredAt }: ItemEntity,
  upcoming: readonly UpcomingJob[],
): DueLine {
  return {
    item: { id, tag, name, kind },
    dueAt: new Date(dueMs ?? registeredAt).toISOString(),
    status,
    stops: stops.map((jobId) => {
      const job = upcoming.find((each) => each.jobId === jobId && each.itemId === itemId)!;
      const { reference, requestReference, startsAt } = job;
      return { jobId, reference, requestReference, startsAt: startsAt.toISOString() };
    }),
  };
}

function readingsOf(
  { forceReadings, extensionReadings }: RecordCalibrationBody,
  { steps, notes }: EvaluationView,
): CalibrationEntity['readings'] {
  return { forceReadings: forceReadings ?? [], extensionReadings: extensionReadings ?? null, steps, notes };
}

function dueOf(item: ItemEntity, { dueAt, standard }: RecordCalibrationBody, performedMs: number, zone: string): Date {
  if (dueAt) return new Date(dueMsOf(dueAt, zone));
  const intervalMonths = item.calibrationIntervalMonths;
  return new Date(calibrationDueAt({ standard, performedMs, intervalMonths, zone }));
}
