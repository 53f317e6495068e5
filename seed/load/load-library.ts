import type { Material, Method } from '#libs/matching/src/index.js';
import { insertRows, lockWhile, MaterialEntity, MethodEntity } from '#libs/records/src/index.js';
import type { DataSource, EntityManager } from 'typeorm';
import { MATERIALS } from '../library/materials.js';
import { METHODS } from '../library/methods.js';
import { idOf } from '../northmoor/ids.js';

/**
 * The published methods and materials that any lab starts with, and what has been put right in them since: a method's next version
 * stands beside the one before, which stays as it is with all that rests on it.
 *
 * @param at the time by the lab's clock
 */
export async function loadLibrary(records: DataSource, at: Date): Promise<void> {
  await records.transaction(async (manager) => {
    await lockWhile(manager, 'library');
    await addMethods(manager, METHODS, at);
    await addMaterials(manager, MATERIALS);
  });
}

export const methodId = ({ id, version }: Pick<Method, 'id' | 'version'>): string => idOf('method', `${id}/${version}`);
export const materialId = (code: string): string => idOf('material', code);

export async function addMethods(manager: EntityManager, methods: readonly Method[], enteredAt: Date): Promise<void> {
  const rows = methods.map((method) => ({
    id: methodId(method),
    code: method.id,
    version: method.version,
    designation: method.designation,
    title: method.title,
    testType: method.testType,
    data: { ...method },
    state: 'offered' as const,
    enteredBy: null,
    enteredAt,
  }));
  const newest = newestByCode(await manager.find(MethodEntity));
  const added = rows.flatMap((row) => {
    const known = newest.get(row.code);
    if (!known) return [row];
    // What a lab wrote itself is the lab's to follow up, and what it no longer offers stays so.
    return known.enteredBy === null && known.version < row.version ? [{ ...row, state: known.state }] : [];
  });
  await insertRows(manager, MethodEntity, added);
}

function newestByCode(rows: readonly MethodEntity[]): ReadonlyMap<string, MethodEntity> {
  const newest = new Map<string, MethodEntity>();
  for (const row of rows) if (row.version > (newest.get(row.code)?.version ?? 0)) newest.set(row.code, row);
  return newest;
}

export async function addMaterials(manager: EntityManager, materials: readonly Material[]): Promise<void> {
  const rows = materials.map((material) => ({
    id: materialId(material.id),
    code: material.id,
    name: material.name,
    group: material.group,
    data: { ...material },
  }));
  const there = new Set((await manager.find(MaterialEntity)).map(({ id }) => id));
  await insertRows(
    manager,
    MaterialEntity,
    rows.filter(({ id }) => !there.has(id)),
  );
}
