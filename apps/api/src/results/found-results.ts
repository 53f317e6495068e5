import type { BatchResults } from '#libs/contract/src/index.js';
import { askOf, methodOf } from '#libs/records/src/index.js';
import type { BatchFound, RequestEntity } from '#libs/records/src/index.js';
import { batchResults } from './batch-results.js';
import { missingOf } from './missing-of.js';
import type { Doubts } from './uncertainty-view.js';

/** The road from the record to the results of a batch, the same for page, file and report. */
export function foundResults(found: BatchFound, request: Pick<RequestEntity, 'conformity'>): BatchResults {
  return batchResults({
    id: found.batch.id,
    label: found.batch.label,
    method: methodOf(found.method),
    material: found.material?.name ?? null,
    specimens: specimensOf(found),
    results: found.results.map(({ specimenId, key, value, revision, basis }) => ({
      ...{ specimenId, key, value, revision },
      flags: basis.flags ?? [],
    })),
    conformity: request.conformity,
    doubts: doubtsOf(found),
  });
}

/** A specimen that lacks a result that was asked for says which, and why if anybody said. */
function specimensOf({ batch, method, material, specimens, results }: BatchFound) {
  const work = { method: methodOf(method), ask: askOf(batch, method, material) };
  return specimens.map((specimen) => ({ ...specimen, missing: missingOf({ work, results }, specimen) }));
}

/** Limits of error by the classes of the load cell and the extensometer that were on the frame. */
function doubtsOf({ items, batch, method }: BatchFound): Doubts {
  const { shape } = askOf(batch, method, null).geometry;
  return { shape, forcePct: classOf(items, 'load-cell'), extensionPct: classOf(items, 'extensometer') };
}

/** The figure of the widest class among the ranges: ISO 7500-1, ISO 9513 and ASTM E4 (`1 %`) name classes by their limit; E83 classes have none here. */
function classOf(items: BatchFound['items'], role: string): number | null {
  const calibration = items.find((row) => row.role === role)?.calibration;
  const limits = (calibration?.ranges ?? [])
    .map(({ className }) => Number.parseFloat(className ?? ''))
    .filter((limit) => limit > 0);
  return limits.length === 0 ? null : Math.max(...limits);
}
