/** Something about readings or dates that a person should know; `code` is stable, `sentence` is for people. */
export interface Note {
  code: string;
  sentence: string;
}

/** Where a figure of a table comes from, and how sure we are of it. */
export interface Provenance {
  source: string;
  confidence:
    'from memory (high)' | 'from memory (medium)' | 'from memory (low)' | 'seen' | 'common practice, no source';
}

/** Forces, torques or extensions over which a class holds: from ≤ value ≤ to, both ends included. */
export interface VerifiedRange {
  direction: 'tension' | 'compression' | 'torque' | 'extension';
  className: string;
  from: number;
  to: number;
  unit: 'N' | 'N·m' | 'mm';
}
