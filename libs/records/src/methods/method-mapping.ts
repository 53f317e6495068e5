import type { Material, Method } from '#libs/matching/src/index.js';
import type { MaterialEntity } from './material.entity.js';
import type { MethodEntity } from './method.entity.js';

/** The method that a row keeps whole; code, version and state stand in columns of their own and win over the copy inside. */
export function methodOf(row: MethodEntity): Method {
  const { code: id, version, designation, title } = row;
  return { ...row.data, id, version, designation, title };
}

/** The material that a row keeps whole. */
export function materialOf(row: MaterialEntity): Material {
  return { ...row.data, id: row.code, name: row.name, group: row.group };
}
