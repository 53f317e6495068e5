/** What a recorded channel did that a sound test does not do. */
export type DoubtCode = 'extension-ended' | 'extension-jumped' | 'spike-left-out' | 'loaded-again';

/** A doubt about a channel on rows [fromRow, toRow], with the figure that caused it. */
export interface SignalDoubt {
  readonly code: DoubtCode;
  readonly fromRow: number;
  readonly toRow: number;
  readonly found: number;
  readonly allowed: number;
  readonly unit: string;
}

/** The columns that signals are doubted by, as they are drawn: positive in the direction of the test. */
export interface Signals {
  /** Strain (or travel) along, and load (or stress) up. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** What keeps running whatever the extensometer does: crosshead travel, else time; null where the file has neither. */
  readonly clock: Float64Array | null;
}
