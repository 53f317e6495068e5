import { randomUUID } from 'node:crypto';
import { fieldProblem, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { BatchBody, ConformityAsk, SaveRequestBody } from '#libs/contract/src/index.js';
import { MethodRepository } from '#libs/records/src/index.js';
import type { BatchEntity, RequestEntity } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';

/** The columns of a request that its form fills. */
export function requestColumns(body: SaveRequestBody): Partial<RequestEntity> {
  return {
    title: body.title,
    purpose: body.purpose ?? '',
    teamId: body.teamId,
    dueAt: body.dueAt ? new Date(body.dueAt) : null,
    specimensAt: body.specimensAt ? new Date(body.specimensAt) : null,
    weight: body.weight ?? 1,
    disposal: body.disposal ?? 'keep-90-days',
    conformity: body.conformity ?? null,
  };
}

export function batchColumns(requestId: string, batches: readonly BatchBody[]): Partial<BatchEntity>[] {
  return batches.map((batch, index) => ({
    id: randomUUID(),
    requestId,
    position: index + 1,
    label: batch.label ?? '',
    methodId: batch.methodId,
    materialId: batch.materialId ?? null,
    ask: batch.ask,
    asTyped: batch.asTyped ?? {},
    specimenCount: batch.specimenCount,
  }));
}

/** Refuses what no draft may hold: methods and materials that do not exist, limits that exclude everything. */
export async function refuseBadDraft(manager: EntityManager, body: SaveRequestBody): Promise<void> {
  const methods = new MethodRepository(manager);
  const known = new Set((await methods.findByIds(body.batches.map(({ methodId }) => methodId))).map(({ id }) => id));
  const wanted = body.batches.map(({ materialId }) => materialId).filter((id) => typeof id === 'string');
  const materials = new Set((await methods.findMaterialsByIds(wanted)).map(({ id }) => id));
  refuseIfAny([
    ...body.batches.flatMap((batch, index) => [
      known.has(batch.methodId)
        ? null
        : unknown(`batches[${index}].methodId`, batch.methodId, 'a method that the lab offers'),
      !batch.materialId || materials.has(batch.materialId)
        ? null
        : unknown(`batches[${index}].materialId`, batch.materialId, 'a material of the library'),
      ...typedProblems(batch.asTyped, `batches[${index}].asTyped`),
    ]),
    ...conformityProblems(body.conformity ?? null),
  ]);
}

function typedProblems(typed: BatchBody['asTyped'], path: string): FieldProblem[] {
  return Object.entries(typed ?? {}).flatMap(([field, entry]: [string, unknown]) => {
    const { value, unit } = (entry ?? {}) as Record<string, unknown>;
    const short = [value, unit].every((each) => typeof each === 'string' && each.length <= 60);
    return short ? [] : [unknown(`${path}.${field}`, entry, 'value and unit as texts of at most 60 characters')];
  });
}

function conformityProblems(asked: ConformityAsk | null): FieldProblem[] {
  if (!asked) return [];
  const { lower, upper, unit } = asked;
  if ((lower ?? null) === null && (upper ?? null) === null) {
    return [
      fieldProblem({ field: 'conformity.lower', found: null, allowed: 'a lower or an upper limit, or both', unit }),
    ];
  }
  const crossed = typeof lower === 'number' && typeof upper === 'number' && lower > upper;
  return crossed ? [fieldProblem({ field: 'conformity.lower', found: lower, allowed: `at most ${upper}`, unit })] : [];
}

function unknown(field: string, found: unknown, allowed: string): FieldProblem {
  return fieldProblem({ field, found, allowed, unit: '' });
}
