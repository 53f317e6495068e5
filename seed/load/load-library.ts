import type { Material, Method } from '#libs/matching/src/index.js';
import { lockWhile, MaterialEntity, MethodEntity } from '#libs/records/src/index.js';
import type { DataSource, EntityManager } from 'typeorm';
import { MATERIALS } from '../library/materials.js';
import { METHODS } from '../library/methods.js';
import { idOf } from '../northmoor/ids.js';
import { insertAll } from './insert.js';

/** The published methods and materials that any lab starts with. What is there already stays as it is. */
export async function loadLibrary(records: DataSource): Promise<void> {
  await records.transaction(async (manager) => {
    await lockWhile(manager, 'library');
    await addMethods(manager, METHODS);
    await addMaterials(manager, MATERIALS);
  });
}

export const methodId = ({ id, version }: Pick<Method, 'id' | 'version'>): string => idOf('method', `${id}/${version}`);
export const materialId = (code: string): string => idOf('material', code);

export async function addMethods(manager: EntityManager, methods: readonly Method[]): Promise<void> {
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
  }));
  const there = new Set((await manager.find(MethodEntity)).map(({ id }) => id));
  await insertAll(
    manager,
    MethodEntity,
    rows.filter(({ id }) => !there.has(id)),
  );
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
  await insertAll(
    manager,
    MaterialEntity,
    rows.filter(({ id }) => !there.has(id)),
  );
}
