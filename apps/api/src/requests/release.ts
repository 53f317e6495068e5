import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { methodOf } from '#libs/records/src/index.js';
import type { MethodEntity, SpecimenEntity } from '#libs/records/src/index.js';

/**
 * From when on a batch may be tested: all of its specimens are here, and the last one is conditioned.
 *
 * @param specimens all of the batch; invalid and untested ones are not waited for
 * @returns null while one is still expected
 */
export function releaseOf(specimens: readonly SpecimenEntity[], method: MethodEntity): Date | null {
  const awaited = specimens.filter(({ fate }) => fate === 'expected' || fate === 'arrived');
  const since = awaited.map(({ arrivedAt, conditioningFrom }) => arrivedAt && (conditioningFrom ?? arrivedAt));
  const here = since.filter((at) => at !== null);
  if (here.length < awaited.length || here.length === 0) return null;
  const conditioningMs = (methodOf(method).conditioning?.hours ?? 0) * MS_PER_HOUR;
  return new Date(Math.max(...here.map((at) => at.getTime())) + conditioningMs);
}

/** E.g. `J-2031-1` for the first batch of `R-2031`. */
export function jobReference(requestReference: string, batchPosition: number): string {
  return `${requestReference.replace(/^R-/, 'J-')}-${batchPosition}`;
}
