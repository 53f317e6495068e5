import type { Provenance } from '#libs/accuracy/src/index.js';

/** Largest percent bending that a method or practice quotes. */
export interface AlignmentLimit extends Provenance {
  method: string;
  bendingPct: number;
  note: string;
}

/** Compare with the editions in force before relying on them. */
export const ALIGNMENT_LIMITS: readonly AlignmentLimit[] = [
  {
    method: 'ASTM D3039',
    bendingPct: 5,
    note: 'good practice 3 % to 5 % at 1000 µε',
    source: 'ASTM D3039',
    confidence: 'from memory (medium)',
  },
  {
    method: 'ASTM D6641',
    bendingPct: 10,
    note: 'front against back',
    source: 'ASTM D6641',
    confidence: 'from memory (medium)',
  },
  { method: 'ASTM E466', bendingPct: 5, note: '', source: 'ASTM E466', confidence: 'from memory (medium)' },
  { method: 'ASTM E606', bendingPct: 5, note: '', source: 'ASTM E606', confidence: 'from memory (medium)' },
  { method: 'ASTM E139', bendingPct: 10, note: '', source: 'ASTM E139', confidence: 'from memory (medium)' },
  { method: 'ASTM E292', bendingPct: 10, note: '', source: 'ASTM E292', confidence: 'from memory (medium)' },
];
