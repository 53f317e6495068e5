import { LabError } from '#libs/errors/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import { In, IsNull } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { CalibrationEntity } from '../calibration/calibration.entity.js';
import { findByIds } from '../platform/find-by-ids.js';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { FaultEntity } from './fault.entity.js';
import { ItemWindowEntity } from './item-window.entity.js';
import { ItemEntity } from './item.entity.js';
import { RigLinkEntity } from './rig.entity.js';

/** What hangs on an item, apart from its own row. */
export interface ItemAround {
  calibrations: CalibrationEntity[];
  faults: FaultEntity[];
  fittedOn: (RigLinkEntity & { frameTag: string }) | null;
}

/** The register's rows, through the manager of the caller's transaction. */
export class ItemRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Items of a kind, or all, by tag. */
  list(kind?: ItemKind): Promise<ItemEntity[]> {
    return this.manager.find(ItemEntity, { where: kind ? { kind } : {}, order: { tag: 'ASC' } });
  }

  /** @throws LabError `item/unknown` */
  async get(id: string): Promise<ItemEntity> {
    const row = await this.manager.findOneBy(ItemEntity, { id });
    if (!row) throw new LabError('item/unknown', 'There is no such item in the register.', { itemId: id });
    return row;
  }

  findByTags(tags: readonly string[]): Promise<ItemEntity[]> {
    return this.manager.findBy(ItemEntity, { tag: In(tags) });
  }

  findByIds(ids: readonly string[]): Promise<ItemEntity[]> {
    return findByIds(this.manager, ItemEntity, ids);
  }

  async add(row: Omit<ItemEntity, 'version'>): Promise<void> {
    await insertRows(this.manager, ItemEntity, [row]);
  }

  /** Changes an item unless someone changed it since we read it. @throws LabError `item/changed-meanwhile` */
  async change({ id, version, tag }: ItemEntity, set: Partial<ItemEntity>): Promise<void> {
    const changed = await updateRows(this.manager, ItemEntity, { id, version }, set);
    if (changed === 0) {
      const now = await this.get(id);
      throw new LabError('item/changed-meanwhile', `${tag} was changed by someone else. Reload it and try again.`, {
        version: now.version,
      });
    }
  }

  /** What hangs on each of these items; three queries, however many there are. */
  async around(items: readonly ItemEntity[]): Promise<Map<string, ItemAround>> {
    const itemId = In(items.map(({ id }) => id));
    const calibrations = await this.manager.find(CalibrationEntity, {
      where: { itemId },
      order: { performedAt: 'DESC', enteredAt: 'DESC' },
    });
    const faults = await this.manager.find(FaultEntity, { where: { itemId }, order: { openedAt: 'DESC' } });
    const links = await this.fitted(items.map(({ id }) => id));
    return new Map(
      items.map(({ id }) => [
        id,
        {
          calibrations: calibrations.filter((row) => row.itemId === id),
          faults: faults.filter((row) => row.itemId === id),
          fittedOn: links.find((row) => row.itemId === id) ?? null,
        },
      ]),
    );
  }

  windowsOf(itemId: string): Promise<ItemWindowEntity[]> {
    return this.manager.find(ItemWindowEntity, { where: { itemId }, order: { startsAt: 'ASC' } });
  }

  openFaultsOf(itemId: string): Promise<FaultEntity[]> {
    return this.manager.findBy(FaultEntity, { itemId, closedAt: IsNull() });
  }

  private async fitted(itemIds: readonly string[]): Promise<(RigLinkEntity & { frameTag: string })[]> {
    const links = await this.manager.findBy(RigLinkEntity, { itemId: In(itemIds) });
    const frames = await this.findByIds(links.map(({ frameId }) => frameId));
    const tags = new Map(frames.map(({ id, tag }) => [id, tag]));
    return links.map((link) => ({ ...link, frameTag: tags.get(link.frameId) ?? '' }));
  }
}
