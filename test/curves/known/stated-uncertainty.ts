import { expandedOfOne } from '#apps/api/src/results/uncertainty-view.js';
import type { Doubts } from '#apps/api/src/results/uncertainty-view.js';
import type { KnownMethod } from './known-methods.js';

/** Error that a class allows, percent: the classes of ISO 7500-1 and ISO 9513 are called by it; ASTM's by name (E4, E83 table 1). */
const ALLOWED_PCT: Readonly<Record<string, number>> = { '1 %': 1, A: 0.1, 'B-1': 0.5, 'B-2': 0.5, C: 1, D: 1 };

/** U of one specimen as the lab states it, k = 2, on a train that is just good enough for the method; null where none is stated. */
export function statedUncertainty(key: string, value: number, { method, geometry }: KnownMethod): number | null {
  const allowed = (className: string) => ALLOWED_PCT[className] ?? Number(className);
  const doubts: Doubts = {
    shape: geometry.shape,
    forcePct: allowed(method.forceClass.className),
    extensionPct: method.strain ? allowed(method.strain.className) : null,
  };
  return expandedOfOne(key, value, method, doubts);
}
