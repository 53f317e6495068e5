import { randomUUID } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { lastOfEach } from '../platform/grouped.js';
import { insertRows, upsertRows } from '../platform/write-rows.js';
import { CurveEntity, CurveSourceEntity, DurationEntity } from './curve.entity.js';
import { ResultEntity } from './result.entity.js';

export type NewResult = Pick<
  ResultEntity,
  'specimenId' | 'jobId' | 'key' | 'value' | 'unit' | 'origin' | 'basis' | 'why' | 'enteredBy'
>;

/** A peak force stays when a size is measured again, but not the stress that its curve is drawn by. */
function isSame(before: NewResult | undefined, { value, unit, basis }: NewResult): boolean {
  if (before?.value !== value || before.unit !== unit) return false;
  return isDeepStrictEqual(before.basis.scales ?? null, basis.scales ?? null);
}

/** Results and curves. Rows are added, never changed: the newest revision counts. */
export class ResultRepository {
  constructor(private readonly manager: EntityManager) {}

  /** The newest revision of each figure of these specimens. */
  async newestOf(specimenIds: readonly string[]): Promise<ResultEntity[]> {
    const rows = await this.manager.find(ResultEntity, {
      where: { specimenId: In(specimenIds) },
      order: { revision: 'ASC' },
    });
    return lastOfEach(rows, ({ specimenId, key }) => `${specimenId} ${key}`);
  }

  /** Stores figures that differ from the newest revision, or are drawn by other scales, each as the next one. @returns those that were stored */
  async add(results: readonly NewResult[], enteredAt: Date): Promise<ResultEntity[]> {
    const there = await this.newestOf([...new Set(results.map(({ specimenId }) => specimenId))]);
    const before = (one: NewResult) =>
      there.find(({ specimenId, key }) => specimenId === one.specimenId && key === one.key);
    const changed = results.filter((one) => !isSame(before(one), one));
    const rows = changed.map((one) => ({
      ...one,
      id: randomUUID(),
      revision: (before(one)?.revision ?? 0) + 1,
      enteredAt,
    }));
    await insertRows(this.manager, ResultEntity, rows);
    return rows;
  }

  async addCurve(row: Omit<CurveEntity, 'id' | 'revision'>): Promise<CurveEntity> {
    const before = await this.manager.count(CurveEntity, { where: { specimenId: row.specimenId } });
    const whole = { ...row, id: randomUUID(), revision: before + 1 };
    await insertRows(this.manager, CurveEntity, [whole]);
    return whole;
  }

  /** The newest curve of each specimen. */
  async curvesOf(specimenIds: readonly string[]): Promise<CurveEntity[]> {
    const rows = await this.manager.find(CurveEntity, {
      where: { specimenId: In(specimenIds) },
      order: { revision: 'ASC' },
    });
    return lastOfEach(rows, ({ specimenId }) => specimenId);
  }

  /** The request that a curve belongs to; null for a curve that nobody knows. */
  async requestOfCurve(curveId: string): Promise<string | null> {
    const curve = await this.manager.findOneBy(CurveEntity, { id: curveId });
    const job = curve && (await this.manager.findOneBy(JobEntity, { id: curve.jobId }));
    return job?.requestId ?? null;
  }

  findSource(fingerprint: string): Promise<CurveSourceEntity | null> {
    return this.manager.findOneBy(CurveSourceEntity, { fingerprint });
  }

  /** Remembers how files of a source are read. */
  async rememberSource(
    row: Pick<CurveSourceEntity, 'fingerprint' | 'name' | 'format' | 'confirmedBy' | 'confirmedAt'>,
  ): Promise<void> {
    await upsertRows(this.manager, CurveSourceEntity, [row], ['fingerprint']);
  }

  /** What a job took, for the durations that are learned; once a job. */
  async storeDuration(row: DurationEntity): Promise<void> {
    await upsertRows(this.manager, DurationEntity, [row], ['jobId']);
  }
}
