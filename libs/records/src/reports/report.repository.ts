import { randomUUID } from 'node:crypto';
import type { ReportState } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { RequestEntity } from '../requests/request.entity.js';
import { ReportEntity } from './report.entity.js';

export interface ReportFilter {
  words?: string;
  /** Only reports of these teams; undefined for all. */
  teamIds?: readonly string[] | undefined;
  limit: number;
}

/** Reports: drafts are rewritten freely, issued ones never change. */
export class ReportRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Newest first. */
  find({ words, teamIds, limit }: ReportFilter): Promise<ReportEntity[]> {
    const query = this.manager
      .createQueryBuilder(ReportEntity, 'report')
      .innerJoin(RequestEntity, 'request', 'request.id = report.requestId')
      .orderBy('report.preparedAt', 'DESC')
      .take(limit);
    if (teamIds) query.andWhere('request.team_id = any(:teamIds)', { teamIds });
    if (words) {
      const like = `%${words.replace(/[\\%_]/g, '\\$&')}%`;
      query.andWhere('(report.number ilike :like or request.reference ilike :like or request.title ilike :like)', {
        like,
      });
    }
    return query.getMany();
  }

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
    row: Pick<ReportEntity, 'requestId' | 'number' | 'revision' | 'document' | 'remarks' | 'amendment' | 'preparedBy'>,
  ): Promise<string> {
    const id = randomUUID();
    await this.manager.insert(ReportEntity, {
      ...row,
      id,
      state: 'draft',
      preparedAt: new Date(),
      version: 1,
    } as never);
    return id;
  }

  /** Changes a report in one of these states unless someone changed it since it was read. @throws LabError `report/changed-meanwhile` */
  async change({ id, version, number }: ReportEntity, from: ReportState, set: Partial<ReportEntity>): Promise<void> {
    const { affected } = await this.manager.update(ReportEntity, { id, version, state: from }, set as never);
    if (affected === 0) {
      throw new LabError('report/changed-meanwhile', `${number} was changed by someone else. Reload it and try again.`);
    }
  }
}
