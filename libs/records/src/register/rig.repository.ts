import type { EntityManager } from 'typeorm';
import { upsertRows } from '../platform/write-rows.js';
import { ItemEntity } from './item.entity.js';
import { RigLinkEntity } from './rig.entity.js';

/** What is fitted on the frames. */
export class RigRepository {
  constructor(private readonly manager: EntityManager) {}

  all(): Promise<RigLinkEntity[]> {
    return this.manager.find(RigLinkEntity, { order: { frameId: 'ASC', fittedAt: 'ASC' } });
  }

  /** What is on a frame; whoever else changes it waits until this transaction is through. */
  async lock(frameId: string): Promise<RigLinkEntity[]> {
    await this.manager.findOne(ItemEntity, { where: { id: frameId }, lock: { mode: 'for_no_key_update' } });
    return this.of(frameId);
  }

  of(frameId: string): Promise<RigLinkEntity[]> {
    return this.manager.findBy(RigLinkEntity, { frameId });
  }

  /**
   * Replaces the rig of a frame. An item that hung on another frame comes off there: it is only once in the lab.
   * What stays on the frame keeps the instant at which it was fitted: a cell that was not touched needs no new check.
   */
  async fit(frameId: string, links: readonly { itemId: string; role: string }[], at: Date): Promise<void> {
    const before = await this.lock(frameId);
    const fittedAt = (itemId: string) => before.find((link) => link.itemId === itemId)?.fittedAt ?? at;
    await this.manager.delete(RigLinkEntity, { frameId });
    if (links.length === 0) return;
    const rows = links.map(({ itemId, role }) => ({ itemId, role, frameId, fittedAt: fittedAt(itemId) }));
    await upsertRows(this.manager, RigLinkEntity, rows, ['itemId']);
  }
}
