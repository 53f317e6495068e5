import { LabError } from '#libs/errors/src/index.js';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { insertRows } from '../platform/write-rows.js';
import { CalibrationEntity } from './calibration.entity.js';
import { ShiftCheckEntity } from './shift-check.entity.js';

/** Calibrations and shift checks. Rows are added, never changed. */
export class CalibrationRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Newest first. */
  of(itemId: string): Promise<CalibrationEntity[]> {
    return this.manager.find(CalibrationEntity, {
      where: { itemId },
      order: { performedAt: 'DESC', enteredAt: 'DESC' },
    });
  }

  ofAll(itemIds: readonly string[]): Promise<CalibrationEntity[]> {
    return this.manager.find(CalibrationEntity, {
      where: { itemId: In(itemIds) },
      order: { performedAt: 'DESC', enteredAt: 'DESC' },
    });
  }

  /** @throws LabError `calibration/unknown` */
  async get(id: string): Promise<CalibrationEntity> {
    const row = await this.manager.findOneBy(CalibrationEntity, { id });
    if (!row) throw new LabError('calibration/unknown', 'There is no such calibration.', { calibrationId: id });
    return row;
  }

  async add(row: CalibrationEntity): Promise<void> {
    await insertRows(this.manager, CalibrationEntity, [row]);
  }

  /** The newest shift checks of a cell. */
  shiftChecksOf(cellId: string, limit = 50): Promise<ShiftCheckEntity[]> {
    return this.manager.find(ShiftCheckEntity, { where: { cellId }, order: { at: 'DESC' }, take: limit });
  }
}
