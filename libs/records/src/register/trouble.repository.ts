import { randomUUID } from 'node:crypto';
import { LabError } from '#libs/errors/src/index.js';
import { IsNull } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { FaultEntity } from './fault.entity.js';
import { ItemWindowEntity } from './item-window.entity.js';

/** Faults of items, and spans in which they cannot be used. */
export class TroubleRepository {
  constructor(private readonly manager: EntityManager) {}

  async openFault(itemId: string, what: string, openedBy: string, openedAt: Date): Promise<string> {
    const id = randomUUID();
    await insertRows(this.manager, FaultEntity, [{ id, itemId, what, openedBy, openedAt }]);
    return id;
  }

  /** @throws LabError `fault/unknown` */
  async getFault(id: string): Promise<FaultEntity> {
    const row = await this.manager.findOneBy(FaultEntity, { id });
    if (!row) throw new LabError('fault/unknown', 'There is no such fault.', { faultId: id });
    return row;
  }

  /** @throws LabError `fault/closed-already` when somebody closed it before */
  async closeFault(id: string, remedy: string, closedBy: string, closedAt: Date): Promise<void> {
    const set = { remedy, closedBy, closedAt };
    const changed = await updateRows(this.manager, FaultEntity, { id, closedAt: IsNull() }, set);
    if (changed === 0) throw new LabError('fault/closed-already', 'This fault was closed before.', { faultId: id });
  }

  async addWindow(row: Omit<ItemWindowEntity, 'id'>): Promise<string> {
    const id = randomUUID();
    await insertRows(this.manager, ItemWindowEntity, [{ id, ...row }]);
    return id;
  }

  /** @throws LabError `window/unknown` */
  async removeWindow(id: string): Promise<ItemWindowEntity> {
    const row = await this.manager.findOneBy(ItemWindowEntity, { id });
    if (!row) throw new LabError('window/unknown', 'There is no such span of an item.', { windowId: id });
    await this.manager.delete(ItemWindowEntity, { id });
    return row;
  }
}
