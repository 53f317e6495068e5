import type { CalibrationView, FaultView, ItemView, PersonRef } from '#libs/contract/src/index.js';
import type { CalibrationEntity, FaultEntity, ItemAroundInList, ItemEntity } from '#libs/records/src/index.js';
import { standingOf } from '../calibration/standing.js';

/** What the views of the register need to know beside the rows. */
export interface RegisterTelling {
  nowMs: number;
  noticeDays: number;
}

/** One line of the register. An open fault makes an item faulty, whatever its row says. */
export function itemView(row: ItemEntity, around: ItemAroundInList, { nowMs, noticeDays }: RegisterTelling): ItemView {
  const { status, dueMs } = standingOf(row, around.calibrations, nowMs, noticeDays);
  const { openFault, fittedOn } = around;
  return {
    id: row.id,
    tag: row.tag,
    kind: row.kind,
    name: row.name,
    model: row.model,
    serialNumber: row.serialNumber,
    state: openFault && row.state === 'in-service' ? 'faulty' : row.state,
    place: row.place,
    fittedOn: fittedOn && { frameId: fittedOn.frameId, frameTag: fittedOn.frameTag, role: fittedOn.role },
    massKg: row.massKg,
    lengthMm: row.lengthMm,
    ratings: row.ratings,
    temperatureMinC: row.temperatureMinC,
    temperatureMaxC: row.temperatureMaxC,
    utilities: row.utilities,
    needsCalibration: row.needsCalibration,
    calibrationIntervalMonths: row.calibrationIntervalMonths,
    calibrationStatus: status,
    calibrationDueAt: dueMs === null ? null : new Date(dueMs).toISOString(),
    details: { ...row.details },
    version: row.version,
  };
}

export function calibrationView(row: CalibrationEntity, named: (id: string) => PersonRef): CalibrationView {
  return {
    id: row.id,
    standard: row.standard,
    certificateNumber: row.certificateNumber,
    laboratory: row.laboratory,
    performedAt: row.performedAt.toISOString(),
    validFrom: row.validFrom.toISOString(),
    dueAt: row.dueAt.toISOString(),
    ranges: row.ranges,
    asFound: row.asFound,
    readings: row.readings && { ...row.readings },
    certificateFileId: row.certificateFileId,
    replaces: row.replaces,
    enteredBy: named(row.enteredBy),
    enteredAt: row.enteredAt.toISOString(),
  };
}

export function faultView(row: FaultEntity, named: (id: string) => PersonRef): FaultView {
  return {
    id: row.id,
    what: row.what,
    openedBy: named(row.openedBy),
    openedAt: row.openedAt.toISOString(),
    closedAt: row.closedAt?.toISOString() ?? null,
    remedy: row.remedy,
  };
}
