import type { Direction, EndShape, FaceSurface, FixturePurpose } from './item.js';
import type { MaterialGroup, StrengthProperty } from './material.js';

/** How the force follows from strength and geometry. */
export type TestType =
  | 'tension'
  | 'compression'
  | 'flexure-3'
  | 'flexure-4'
  | 'lap-shear'
  | 'short-beam'
  | 'in-plane-shear'
  | 'double-shear'
  | 'peel'
  | 'tear'
  | 'strip'
  | 'torsion'
  | 'fracture'
  | 'component';

/** Cross-section of the loaded part of the specimen. */
export type Shape = 'rectangle' | 'round' | 'tube' | 'thread' | 'strip' | 'component';

/** Figures of a specimen; which ones count depends on method and shape. */
export type GeometryKey =
  | 'widthMm'
  | 'thicknessMm'
  | 'diameterMm'
  | 'outerDiameterMm'
  | 'innerDiameterMm'
  | 'areaMm2'
  | 'parallelLengthMm'
  | 'gaugeLengthMm'
  | 'gripSeparationMm'
  | 'heightMm'
  | 'lengthMm'
  | 'spanMm'
  | 'overlapMm'
  | 'crackLengthMm'
  | 'endWidthMm'
  | 'endThicknessMm';

export interface GeometryNeed {
  key: GeometryKey;
  /** Only for these shapes; absent: for every shape of the method. */
  shapes?: readonly Shape[];
  required: boolean;
  /** Bounds in the unit of the key. */
  min: number;
  max: number;
  /** What the method itself proposes, in the unit of the key. */
  usual?: number;
  help: string;
}

/** Rates: mm/min, 1/s, 1/min, MPa/s or °/min as the kind says. */
export type SpeedRule =
  | { kind: 'fixed'; mmPerMin: number }
  | { kind: 'strain-rate'; perS: number; over: 'parallelLengthMm' | 'gripSeparationMm' | 'gaugeLengthMm' | 'heightMm' }
  | { kind: 'flexure-rate'; outerFibrePerMin: number }
  | { kind: 'stress-rate'; mPaPerS: number }
  | { kind: 'rotation'; degPerMin: number }
  | { kind: 'asked'; minMmPerMin: number; maxMmPerMin: number; usualMmPerMin: number };

/** One stage of the test; a two-speed method has two. */
export interface SpeedStage {
  stage: 'whole' | 'modulus' | 'yield' | 'to-break';
  rule: SpeedRule;
  /** Allowed deviation, percent of the speed; null when the method names none. */
  tolerancePct: number | null;
  source: string;
}

export interface ClassNeed {
  standard: string;
  className: string;
  source: string;
}

export interface StrainRule extends ClassNeed {
  measures: 'axial' | 'deflection';
  /** Results that are invalid without an extensometer. */
  demandedFor: readonly string[];
  /** Results for which an extensometer is better, crosshead is a caution. */
  preferredFor: readonly string[];
  /** Gauge length proposed when the request names none, mm; null for a deflectometer. */
  usualGaugeLengthMm: number | null;
}

export type Ends =
  | { by: 'grips'; ends: readonly EndShape[]; surfaces: readonly FaceSurface[] }
  | { by: 'platens'; sphericalSeat: 'required' | 'preferred' | 'not-needed' }
  | { by: 'fixture'; purpose: FixturePurpose; withGrip: boolean };

/** A smallest step in the result's internal unit (strain 0.5 % is 0.005), or so many significant figures. */
export type ReportStep = { step: number } | { significant: number };

export interface Conditioning {
  hours: number;
  temperatureC: number;
  humidityPct: number | null;
  standard: string;
}

export type Hazard =
  'fragments' | 'stored-energy' | 'biological' | 'pressure' | 'heat' | 'cold' | 'sharp-edges' | 'dust';

/** A test procedure that the lab offers, as versioned data. A request keeps the version that it was agreed with. */
export interface Method {
  id: string;
  /** As printed on a report, e.g. `ISO 527-2`. */
  designation: string;
  version: number;
  /** What this version puts right, in words; left out by the first. */
  changed?: string;
  title: string;
  testType: TestType;
  direction: Direction;
  materialGroups: readonly MaterialGroup[];
  shapes: readonly Shape[];
  geometry: readonly GeometryNeed[];
  /** Loading span over support span of a four-point test; null elsewhere. */
  loadingSpanRatio: number | null;
  /** Property of the material that the force estimate starts from. */
  strength: StrengthProperty;
  speeds: readonly SpeedStage[];
  /** Keys of the results that can be asked for; the first `usualResults` are proposed. */
  results: readonly string[];
  usualResults: readonly string[];
  /** Strain at which the test ends at the latest, as a fraction; null when it runs to break. */
  endStrain: number | null;
  /** Strain bounds of the modulus, as fractions; null when the method has no modulus. */
  modulusStrain: { from: number; to: number } | null;
  forceClass: ClassNeed;
  strain: StrainRule | null;
  ends: Ends;
  conditioning: Conditioning | null;
  minSpecimens: number;
  defaultMinPerSpecimen: number;
  defaultSetupMin: number;
  /** Largest percent bending of the alignment check; null when the method asks for none. */
  alignmentMaxBendingPct: number | null;
  hazards: readonly Hazard[];
  /** A guard is needed whatever the energy. */
  guardAlways: boolean;
  /** Recipe for the reduction of its curves, read by the reduction core. */
  reduction: Readonly<Record<string, unknown>>;
  /** How a reported value is rounded, per result key. */
  reportSteps: Readonly<Record<string, ReportStep>>;
  source: string;
  confidence: string;
}
