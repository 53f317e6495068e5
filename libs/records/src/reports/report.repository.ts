import { randomUUID } from 'node:crypto';
import type { ReportState } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { ReportEntity } from './report.entity.js';

/** Reports: drafts are rewritten freely, issued ones never change. */
export class ReportRepository {
  constructor(private readonly manager: EntityManager) {}

  /** @throws LabError `report/unknown` */
  async get(id: string): Promise<ReportEntity> {
    const row = await this.manager.findOneBy(ReportEntity, { id });
    if (!row) throw new LabError('report/unknown', 'There is no such report.', { reportId: id });
    return row;
  }

  ofRequest(requestId: string): Promise<ReportEntity[]> {
    return this.manager.find(ReportEntity, { where: { requestId }, order: { revision: 'ASC' } });
  }

  /** Every revision of a number. */
  ofNumber(number: string): Promise<ReportEntity[]> {
    return this.manager.find(ReportEntity, { where: { number }, order: { revision: 'ASC' } });
  }

  async add(
    row: Pick<
      ReportEntity,
      'requestId' | 'number' | 'revision' | 'document' | 'remarks' | 'amendment' | 'preparedBy' | 'preparedAt'
    >,
  ): Promise<string> {
    const id = randomUUID();
    await insertRows(this.manager, ReportEntity, [{ ...row, id, state: 'draft', version: 1 }]);
    return id;
  }

  /** Changes a report in one of these states unless someone changed it since it was read. @throws LabError `report/changed-meanwhile` */
  async change({ id, version, number }: ReportEntity, from: ReportState, set: Partial<ReportEntity>): Promise<void> {
    const changed = await updateRows(this.manager, ReportEntity, { id, version, state: from }, set);
    if (changed === 0) {
      throw new LabError('report/changed-meanwhile', `${number} was changed by someone else. Reload it and try again.`);
    }
  }
}
