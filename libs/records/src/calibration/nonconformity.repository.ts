import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { NonconformityEntity } from './nonconformity.entity.js';

export class NonconformityRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Newest first. */
  all(): Promise<NonconformityEntity[]> {
    return this.manager.find(NonconformityEntity, { order: { reference: 'DESC' } });
  }

  /** @throws LabError `nonconformity/unknown` */
  async get(id: string): Promise<NonconformityEntity> {
    const row = await this.manager.findOneBy(NonconformityEntity, { id });
    if (!row) throw new LabError('nonconformity/unknown', 'There is no such nonconformity.', { nonconformityId: id });
    return row;
  }

  async add(row: Partial<NonconformityEntity>): Promise<void> {
    await insertRows(this.manager, NonconformityEntity, [row]);
  }

  /** @throws LabError `nonconformity/changed-meanwhile` */
  async change({ id, version, reference }: NonconformityEntity, set: Partial<NonconformityEntity>): Promise<void> {
    const changed = await updateRows(this.manager, NonconformityEntity, { id, version }, set);
    if (changed === 0) {
      const sentence = `${reference} was changed by someone else. Reload it and try again.`;
      throw new LabError('nonconformity/changed-meanwhile', sentence, { version: (await this.get(id)).version });
    }
  }
}
