import { curveResults } from '#apps/worker/src/read-curves/curve-results.js';
import type { CurveResult } from '#apps/worker/src/read-curves/curve-results.js';
import { dimensionsOf, measuredGeometry, recipeOf } from '#apps/worker/src/read-curves/recipe-of.js';
import type { Ask } from '#libs/matching/src/index.js';
import { HEAD_BYTES, checkCurveFormat, createCurveReader, proposeFormat, reduceCurve } from '#libs/reduction/src/index.js';
import type { KnownMethod } from './known-methods.js';

/** What a lab would see of a file: its results with their flags, or that it was refused. */
export type Seen = { state: 'refused'; why: string } | { state: 'reduced'; results: readonly CurveResult[]; notes: readonly string[] };

/** The way of a file through the lab: its format proposed and confirmed by a person as it is proposed, read, reduced by the library's own recipe, flags in words. */
export function reduceAsLab(file: Uint8Array, { method, geometry }: Pick<KnownMethod, 'method' | 'geometry'>): Seen {
  const proposal = proposeFormat(file.subarray(0, HEAD_BYTES), file.length <= HEAD_BYTES);
  if (!proposal) return { state: 'refused', why: 'no rows' };
  const problem = checkCurveFormat(proposal.format)[0];
  if (problem) return { state: 'refused', why: problem.sentence };
  const reader = createCurveReader({ format: proposal.format });
  reader.push(file);
  const reading = reader.end();
  if (reading.state === 'refused') return { state: 'refused', why: reading.problems[0]?.reason ?? 'unread' };
  const ask = { geometry, results: method.results } as unknown as Ask;
  const readings = Object.fromEntries(
    Object.entries(geometry).flatMap(([key, value]) => (typeof value === 'number' ? [[key, [value]]] : [])),
  );
  const measured = measuredGeometry(ask, readings);
  const outcome = reduceCurve(reading.curve, recipeOf(method, ask), dimensionsOf(method, measured));
  if (outcome.state === 'refused') return { state: 'refused', why: outcome.reasons[0]!.reason };
  const results = curveResults(outcome, reading.curve, method, measured, null);
  const notes = (results.find(({ key }) => key === 'peak-load')?.basis['flags'] ?? []);
  return { state: 'reduced', results, notes };
}
