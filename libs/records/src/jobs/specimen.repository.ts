import { LabError } from '#libs/errors/src/index.js';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { updateRows } from '../platform/write-rows.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';

/** Specimens as the bench changes them. */
export class SpecimenRepository {
  constructor(private readonly manager: EntityManager) {}

  /** A specimen of a batch; whoever else changes it waits. @throws LabError `specimen/unknown` */
  async lock(batchId: string, id: string): Promise<SpecimenEntity> {
    const row = await this.manager.findOne(SpecimenEntity, {
      where: { id, batchId },
      lock: { mode: 'pessimistic_write' },
    });
    if (!row) throw new LabError('specimen/unknown', 'There is no such specimen in this job.', { specimenId: id });
    return row;
  }

  /** @throws LabError `specimen/changed-meanwhile` */
  async change({ id, version, label }: SpecimenEntity, set: Partial<SpecimenEntity>): Promise<void> {
    const changed = await updateRows(this.manager, SpecimenEntity, { id, version }, set);
    if (changed === 0)
      throw new LabError(
        'specimen/changed-meanwhile',
        `${label} was changed by someone else. Reload it and try again.`,
        { specimenId: id },
      );
  }

  /** Specimens of a batch that nothing was found on yet. */
  open(batchId: string): Promise<SpecimenEntity[]> {
    return this.manager.find(SpecimenEntity, {
      where: { batchId, fate: In(['expected', 'arrived']) },
      order: { position: 'ASC' },
    });
  }
}
