/** Something about readings or dates that a person should know; `code` is stable, `sentence` is for people. */
export interface Note {
  code: string;
  sentence: string;
}

/** Forces, torques or extensions over which a class holds: from ≤ value ≤ to, both ends included. */
export interface VerifiedRange {
  direction: 'tension' | 'compression' | 'torque' | 'extension';
  className: string;
  from: number;
  to: number;
  unit: 'N' | 'N·m' | 'mm';
}
