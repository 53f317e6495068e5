import { EXTENSION_CLASSES } from '#libs/accuracy/src/index.js';
import type { ExtensionClass } from '#libs/accuracy/src/index.js';
import type { BatchResults } from '#libs/contract/src/index.js';
import { askOf, methodOf } from '#libs/records/src/index.js';
import type { BatchFound, RequestEntity } from '#libs/records/src/index.js';
import { batchResults } from './batch-results.js';
import { missingOf } from './missing-of.js';
import { strainLengthOf, strainReadsOf } from './strain-doubt.js';
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
      reads: strainReadsOf(basis),
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
  const { geometry } = askOf(batch, method, null);
  const limits = extensionClassOf(items);
  const strainLengthMm = strainLengthOf(methodOf(method), geometry);
  return { geometry, forcePct: forceClassOf(items), extensometer: limits && { limits, strainLengthMm } };
}

const rangesOf = (items: BatchFound['items'], role: string) =>
  items.find((row) => row.role === role)?.calibration?.ranges ?? [];

/** The figure of the widest class among the ranges: ISO 7500-1 and ASTM E4 (`1 %`) name classes by their limit. */
function forceClassOf(items: BatchFound['items']): number | null {
  const limits = rangesOf(items, 'load-cell')
    .map(({ className }) => Number.parseFloat(className ?? ''))
    .filter((limit) => limit > 0);
  return limits.length === 0 ? null : Math.max(...limits);
}

/** The widest class among the ranges of the extensometer. */
function extensionClassOf(items: BatchFound['items']): ExtensionClass | null {
  const names = rangesOf(items, 'extensometer').map(({ className }) => className);
  const held = EXTENSION_CLASSES.filter(({ className }) => names.includes(className));
  return held.sort((one, other) => other.biasPct - one.biasPct)[0] ?? null;
}
