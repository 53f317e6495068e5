import { LabError } from '#libs/errors/src/index.js';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { grouped } from '../platform/grouped.js';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { BatchEntity } from './batch.entity.js';
import { RequestEntity } from './request.entity.js';
import { RequestMessageEntity } from './request-message.entity.js';
import { SpecimenEntity } from './specimen.entity.js';

/** A batch with its specimens, in their order. */
export interface WholeBatch extends BatchEntity {
  specimens: SpecimenEntity[];
}

/** Requests with their batches, specimens and messages, through the manager of the caller's transaction. */
export class RequestRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Requests, newest first. @param teamIds only of these teams; absent means of all */
  newest(limit: number, teamIds?: readonly string[]): Promise<RequestEntity[]> {
    const where = teamIds ? { teamId: In(teamIds) } : {};
    return this.manager.find(RequestEntity, { where, order: { createdAt: 'DESC', id: 'DESC' }, take: limit });
  }

  /** Those that a file called so, or that bear this number of the lab. */
  findNamed(names: readonly string[]): Promise<RequestEntity[]> {
    return this.manager.find(RequestEntity, { where: [{ importedAs: In(names) }, { reference: In(names) }] });
  }

  /**
   * @param teamIds teams whose requests may be seen; absent means all
   * @returns null also for a request that may not be seen
   */
  async findSeen(id: string, teamIds?: readonly string[]): Promise<RequestEntity | null> {
    const row = await this.manager.findOneBy(RequestEntity, { id });
    return row && (!teamIds || teamIds.includes(row.teamId)) ? row : null;
  }

  /** The same for who has to have it. @throws LabError `request/unknown`, also for a request that may not be seen */
  async get(id: string, teamIds?: readonly string[]): Promise<RequestEntity> {
    const row = await this.findSeen(id, teamIds);
    if (!row) throw new LabError('request/unknown', 'There is no such request.', { requestId: id });
    return row;
  }

  /** With specimens, in their order; read apart, because a join would repeat a batch's whole ask for each of its specimens. */
  async batchesOf(requestIds: readonly string[]): Promise<WholeBatch[]> {
    const batches = await this.manager.find(BatchEntity, {
      where: { requestId: In(requestIds) },
      order: { position: 'ASC' },
    });
    const specimens = await this.manager.find(SpecimenEntity, {
      where: { batchId: In(batches.map(({ id }) => id)) },
      order: { position: 'ASC' },
    });
    const ofBatch = grouped(specimens, ({ batchId }) => batchId);
    return batches.map((batch) => ({ ...batch, specimens: ofBatch.get(batch.id) ?? [] }));
  }

  messagesOf(requestId: string): Promise<RequestMessageEntity[]> {
    return this.manager.find(RequestMessageEntity, { where: { requestId }, order: { at: 'ASC', id: 'ASC' } });
  }

  async add(row: Partial<RequestEntity>, batches: readonly Partial<BatchEntity>[]): Promise<void> {
    await insertRows(this.manager, RequestEntity, [row]);
    await insertRows(this.manager, BatchEntity, batches);
  }

  /** Changes a request, or moves it, unless someone did since we read it. @throws LabError `request/changed-meanwhile` */
  async change({ id, version, state, reference }: RequestEntity, set: Partial<RequestEntity>): Promise<void> {
    const changed = await updateRows(this.manager, RequestEntity, { id, version, state }, set);
    if (changed === 0) {
      const now = await this.get(id);
      throw new LabError(
        'request/changed-meanwhile',
        `${reference} was changed by someone else. Reload it and try again.`,
        {
          version: now.version,
          state: now.state,
        },
      );
    }
  }

  /** Puts other batches in the place of a draft's; their specimens go with them. */
  async replaceBatches(requestId: string, batches: readonly Partial<BatchEntity>[]): Promise<void> {
    await this.manager.delete(BatchEntity, { requestId });
    await insertRows(this.manager, BatchEntity, batches);
  }

  async addSpecimens(specimens: readonly Partial<SpecimenEntity>[]): Promise<void> {
    await insertRows(this.manager, SpecimenEntity, specimens);
  }

  async dropSpecimens(batchIds: readonly string[]): Promise<void> {
    await this.manager.delete(SpecimenEntity, { batchId: In(batchIds) });
  }

  async addMessage(row: RequestMessageEntity): Promise<void> {
    await insertRows(this.manager, RequestMessageEntity, [row]);
  }

  /** Specimens of one request, locked so that two who receive the same box take turns. */
  lockSpecimens(requestId: string): Promise<SpecimenEntity[]> {
    return this.manager
      .createQueryBuilder(SpecimenEntity, 'specimen')
      .innerJoin(BatchEntity, 'batch', 'batch.id = specimen.batchId')
      .where('batch.requestId = :requestId', { requestId })
      .orderBy('specimen.label')
      .setLock('for_no_key_update', undefined, ['specimen'])
      .getMany();
  }

  async receive(specimenIds: readonly string[], set: Partial<SpecimenEntity>): Promise<void> {
    await updateRows(this.manager, SpecimenEntity, { id: In(specimenIds) }, set);
  }
}
