import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { insertRows } from '../platform/write-rows.js';
import { ShiftCheckEntity } from './shift-check.entity.js';

/** Shift checks; added, never changed. */
export class ShiftCheckRepository {
  constructor(private readonly manager: EntityManager) {}

  async add(row: Omit<ShiftCheckEntity, 'id'>): Promise<void> {
    await insertRows(this.manager, ShiftCheckEntity, [{ id: randomUUID(), ...row }]);
  }
}
