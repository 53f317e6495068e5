import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { findByIds } from '../platform/find-by-ids.js';
import { insertRows } from '../platform/write-rows.js';
import { cachedMaterials, cachedMethods } from './cached-library.js';
import { MaterialEntity } from './material.entity.js';
import { MethodEntity } from './method.entity.js';

/** Methods by version, and the material library. */
export class MethodRepository {
  constructor(private readonly manager: EntityManager) {}

  /** The newest version of every method that the lab offers, by designation. */
  async offered(): Promise<MethodEntity[]> {
    const newest = await this.manager
      .createQueryBuilder(MethodEntity, 'method')
      .distinctOn(['method.code'])
      .orderBy('method.code')
      .addOrderBy('method.version', 'DESC')
      .getMany();
    const offered = newest.filter(({ state }) => state === 'offered');
    return offered.sort((a, b) => a.designation.localeCompare(b.designation, 'en', { numeric: true }));
  }

  /** @throws LabError `method/unknown` */
  async get(id: string): Promise<MethodEntity> {
    const row = (await cachedMethods(this.manager, [id])).get(id);
    if (!row) throw new LabError('method/unknown', 'The lab has no such method.', { methodId: id });
    return row;
  }

  versionsOf(code: string): Promise<MethodEntity[]> {
    return this.manager.find(MethodEntity, { where: { code }, order: { version: 'DESC' } });
  }

  findByIds(ids: readonly string[]): Promise<MethodEntity[]> {
    return findByIds(this.manager, MethodEntity, ids);
  }

  /** Two who add the next version at once collide on the unique (code, version). */
  async add(row: MethodEntity): Promise<void> {
    await insertRows(this.manager, MethodEntity, [row]);
  }

  materials(): Promise<MaterialEntity[]> {
    return this.manager.find(MaterialEntity, { order: { group: 'ASC', name: 'ASC' } });
  }

  /** @throws LabError `material/unknown` */
  async getMaterial(id: string): Promise<MaterialEntity> {
    const row = (await cachedMaterials(this.manager, [id])).get(id);
    if (!row) throw new LabError('material/unknown', 'The library has no such material.', { materialId: id });
    return row;
  }

  findMaterialsByIds(ids: readonly string[]): Promise<MaterialEntity[]> {
    return findByIds(this.manager, MaterialEntity, ids);
  }

  async addMaterial(row: Omit<MaterialEntity, 'version'>): Promise<void> {
    await insertRows(this.manager, MaterialEntity, [row]);
  }
}
