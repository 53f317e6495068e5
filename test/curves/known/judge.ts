import type { CurveResult } from '#apps/worker/src/read-curves/curve-results.js';
import type { ResultBasis } from '#libs/records/src/index.js';
import type { KnownMethod } from './known-methods.js';
import type { Law } from './laws.js';
import { reduceAsLab } from './reduce-as-lab.js';
import { fileOf } from './recording.js';
import type { Recording } from './recording.js';
import { statedUncertainty } from './stated-uncertainty.js';

/** What became of one result: right, wrong with a remark that says why it may be, missing with its reason, or wrong in silence. */
export type Fate = 'right' | 'flagged' | 'missing' | 'silent';

export interface Judged {
  key: string;
  truth: number;
  found: number | null;
  fate: Fate;
  remarks: readonly string[];
  /** What the figure rests on, as it is kept. */
  basis: ResultBasis;
}

/**
 * How far a figure may lie from the truth before it has to be flagged, where the lab states no U: about what class 1 equipment and
 * ordinary sizes leave open (forces and stresses 2 %, strains and energies 4 %, moduli 5 %; common practice, no source).
 */
const TOLERANCE: Readonly<Record<string, number>> = { modulus: 0.05, stiffness: 0.05 };
const OF_STRAIN = /strain-at-(peak|break)|energy|travel/;

function toleranceOf(key: string): number {
  return TOLERANCE[key] ?? (OF_STRAIN.test(key) ? 0.04 : 0.02);
}

/** U says how well the strain was measured, not at which one a flat top is highest: less than a class's error of force decides that. */
const WHERE_THE_TOP_IS = ['strain-at-peak', 'plastic-strain-at-peak'];

/** Share of the figure by which it may miss the truth without a remark: the stated U, where there is one. */
function allowedOff({ key, value, basis }: CurveResult, known: KnownMethod): number {
  const plain = key.split('@')[0]!;
  const stated = WHERE_THE_TOP_IS.includes(plain) ? null : statedUncertainty(key, value, basis, known);
  return stated === null ? toleranceOf(plain) : stated / Math.abs(value);
}

/** The truth of a result, by its key. */
export function truthOf({ method }: Pick<KnownMethod, 'method'>, law: Law, key: string): number | null {
  const [plain = key, at] = key.split('@');
  const strains = method.reduction['atStrains'] as readonly number[] | undefined;
  return law.truth(plain, at === undefined ? (strains?.[0] ?? null) : Number(at));
}

/** Puts a recording through the lab's own way and holds each result to what is known. A refused file has no results. */
export function judge(known: KnownMethod, law: Law, recording: Recording): Judged[] {
  const seen = reduceAsLab(fileOf(recording), known);
  const keys = [...new Set(['peak-load', ...known.method.results])];
  return keys.flatMap((key): Judged[] => {
    const truth = truthOf(known, law, key);
    if (truth === null) return [];
    const found = seen.state === 'reduced' ? seen.results.find((each) => each.key.split('@')[0] === key) : undefined;
    if (!found || seen.state === 'refused') return [{ key, truth, found: null, fate: 'missing', remarks: [], basis: {} }];
    // That another result is missing says nothing of this one.
    const remarks = [...(found.basis['flags'] as string[]), ...seen.notes].filter((each) => !each.includes(' is missing: '));
    const off = Math.abs(found.value / truthOf(known, law, found.key)! - 1);
    const fate: Fate = off <= allowedOff(found, known) ? 'right' : remarks.length > 0 ? 'flagged' : 'silent';
    return [{ key, truth, found: found.value, fate, remarks, basis: found.basis }];
  });
}
