/*
 * ask/: what a request needs of a load train, and the figures behind it. It may import register/.
 */
import type { ControlMode, Direction, EndShape } from '../register/item.js';
import type { MaterialGroup } from '../register/material.js';
import type { ClassNeed, Ends, Hazard, SpeedStage, StrainRule, TestType } from '../register/method.js';

/** A derived number that can be shown with the road that led to it. */
export interface Figure {
  value: number;
  unit: string;
  /** The formula as text, e.g. `F = σ·b·t`. */
  formula: string;
  inputs: readonly { name: string; value: number; unit: string }[];
  source: string;
  /** An assumption that the requester has to confirm. */
  assumed?: true;
}

/** Everything that a load train must offer, derived from one ask. Torque tests carry N·m where force tests carry N. */
export interface Needs {
  methodId: string;
  methodVersion: number;
  testType: TestType;
  direction: Direction;
  /** N, or N·m for torque. */
  loadUnit: 'N' | 'N·m';
  peakLow: Figure;
  peakHigh: Figure;
  /** Smallest force (torque) that a wanted result reads. */
  smallest: Figure;
  /** Crosshead speed in mm/min, or rotation in °/min for torque. */
  speeds: readonly { stage: SpeedStage['stage']; speed: Figure }[];
  /** How the speed is controlled. */
  control: ControlMode;
  /** N/s where the method sets a stress rate; else null. */
  forceRate: Figure | null;
  /** Crosshead travel to the end of the test, mm. */
  travel: Figure;
  /** ½·F·δ that the specimen alone releases at the peak, J; the frame's own part is added by the rule `guarding`. */
  storedEnergy: Figure;
  strain: StrainNeed;
  temperature: Figure;
  /** Whether a chamber is needed for that temperature. */
  chamber: boolean;
  specimen: SpecimenNeed;
  ends: Ends;
  forceClass: ClassNeed;
  conditioning: Figure | null;
  hazards: readonly Hazard[];
  guardAlways: boolean;
  brittle: boolean;
  materialGroup: MaterialGroup | null;
  specimens: number;
  minPerSpecimen: number;
  setupMin: number;
  alignmentMaxBendingPct: number | null;
  /** Names of the figures that are assumed and not yet confirmed. */
  toConfirm: readonly string[];
}

export interface StrainNeed {
  how: 'none' | 'crosshead' | 'extensometer';
  /** A result is invalid without an extensometer. */
  demanded: boolean;
  contactAllowed: boolean;
  rule: StrainRule | null;
  gaugeLength: Figure | null;
  /** Extension that the extensometer must follow, mm. */
  extension: Figure | null;
  /** Smallest extension that a wanted result reads, mm; null where it is unknown. */
  smallestExtension: Figure | null;
  /** Length that strains are referred to, mm: the gauge length, or a beam's deflection at a strain of 1; null without an extensometer. */
  strainLengthMm: number | null;
}

export interface SpecimenNeed {
  endShape: EndShape;
  /** What goes between the jaws: thickness or diameter, mm, and width, mm. */
  gripThicknessMm: number;
  gripWidthMm: number;
  /** Length between the ends of the train: grip separation, height between platens, or 0 on a fixture, mm. */
  freeLengthMm: number;
  /** Where the extensometer and chamber act, mm. */
  bodyThicknessMm: number;
  bodyWidthMm: number;
  totalLengthMm: number | null;
  spanMm: number | null;
}
