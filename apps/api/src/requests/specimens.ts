import { randomUUID } from 'node:crypto';
import type { BatchEntity, SpecimenEntity } from '#libs/records/src/index.js';

/** The specimens that a batch is made of, each with the label that goes on it, e.g. `R-2031-1-03`. */
export function specimensOf(
  reference: string,
  batch: BatchEntity,
): Pick<SpecimenEntity, 'id' | 'batchId' | 'label' | 'position'>[] {
  const digits = Math.max(2, String(batch.specimenCount).length);
  return Array.from({ length: batch.specimenCount }, (_, index) => ({
    id: randomUUID(),
    batchId: batch.id,
    label: `${reference}-${batch.position}-${String(index + 1).padStart(digits, '0')}`,
    position: index + 1,
  }));
}
