import { expandedOfOne } from '#apps/api/src/results/uncertainty-view.js';
import type { Doubts } from '#apps/api/src/results/uncertainty-view.js';
import { strainLengthOf, strainReadsOf } from '#apps/api/src/results/strain-doubt.js';
import { EXTENSION_CLASSES } from '#libs/accuracy/src/index.js';
import type { KnownMethod } from './known-methods.js';
import type { ResultBasis } from '#libs/records/src/index.js';

/** A train that is just good enough for the method, with the specimen's own sizes. */
export function leastTrain({ method, geometry }: Pick<KnownMethod, 'method' | 'geometry'>): Doubts {
  const { forceClass, strain } = method;
  const limits = EXTENSION_CLASSES.find(
    (each) => each.standard === strain?.standard && each.className === strain.className,
  );
  return {
    geometry,
    forcePct: Number.parseFloat(forceClass.className),
    extensometer: limits ? { limits, strainLengthMm: strainLengthOf(method, geometry) } : null,
  };
}

/** U of one specimen as the lab states it, k = 2, on a train that is just good enough for the method; null where none is stated. */
export function statedUncertainty(
  key: string,
  value: number,
  basis: ResultBasis,
  known: KnownMethod,
): number | null {
  return expandedOfOne({ key, value, reads: strainReadsOf(basis) }, known.method, leastTrain(known));
}
