/** A figure as it is kept, and how its writer wrote it. */
export interface TypedFigure {
  /** Result key, perhaps with the strain that it belongs to: `stress-at-strain@0.1`. */
  key: string;
  /** In `unit`: the internal unit of its quantity, strain as a fraction. */
  value: number;
  unit: string;
  /** The unit in which it was typed, and how many of `unit` one of it is. */
  typed: { unit: string; factor: number };
}
