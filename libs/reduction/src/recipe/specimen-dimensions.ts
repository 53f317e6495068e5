/**
 * What was measured on one specimen. Lengths in mm, areas in mm². Each is the mean of the readings;
 * a missing one makes the results that need it missing, with that reason.
 */
export interface SpecimenDimensions {
  /** Width of a rectangular section, of a peel strip or of a lap joint. */
  readonly widthMm?: number;
  /** Thickness (depth in bending) of a rectangular section, or of a tear or foam specimen. */
  readonly thicknessMm?: number;
  /** Outer diameter of a round bar or tube. */
  readonly diameterMm?: number;
  /** Inner diameter of a tube. */
  readonly innerDiameterMm?: number;
  /** Area where it was found in another way (mass and density, drawing); goes before the ones computed. */
  readonly areaMm2?: number;
  /** Extensometer gauge length Le, to which strain refers. */
  readonly gaugeLengthMm?: number;
  /** Distance between the grips, for strain from the crosshead where no gauge length is set. */
  readonly gripDistanceMm?: number;
  /** Height between the platens, for compression. */
  readonly heightMm?: number;
  /** Overlap of a lap joint. */
  readonly overlapMm?: number;
  /** Original gauge length L0 between the marks, for the elongation measured by hand. */
  readonly originalGaugeLengthMm?: number;
  /** Distance between the marks after fracture, Lu. */
  readonly finalGaugeLengthMm?: number;
  /** Least area after fracture, Su. */
  readonly finalAreaMm2?: number;
  /** Distance from the break to the nearer mark. */
  readonly breakToMarkMm?: number;
}
