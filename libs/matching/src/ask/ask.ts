import type { EndShape } from '../register/item.js';
import type { StrengthProperty } from '../register/material.js';
import type { GeometryKey, Hazard, Shape } from '../register/method.js';

export interface Geometry extends Partial<Record<GeometryKey, number>> {
  shape: Shape;
}

/** What a requester declares instead of, or against, the library: a band, low ≤ high. */
export interface Band {
  low: number;
  high: number;
}

/** One batch of a request: specimens of one kind, tested under one set of conditions. */
export interface Ask {
  methodId: string;
  /** Version of the method that the request was agreed with. */
  methodVersion: number;
  /** From the material library; null when strength or force is declared. */
  materialId: string | null;
  /** Declared strength in MPa (peel, tear, strip: N/mm), overrules the library's band. */
  strength: Band | null;
  /** Declared peak force, N (torque methods: N·m), overrules strength. Required for component tests. */
  peak: Band | null;
  /** Declared Young's modulus, MPa; null takes the library's. */
  modulusMPa: Band | null;
  geometry: Geometry;
  endShape: EndShape;
  specimens: number;
  /** Test temperature, °C; null is room temperature. */
  temperatureC: number | null;
  /** Keys of the results that are wanted, out of the method's list. */
  results: readonly string[];
  /** For methods that leave the speed to the requester, mm/min. */
  speedMmPerMin: number | null;
  /** Declared crosshead travel to the end of the test, mm; null derives it from the strain at break. */
  travelMm: number | null;
  options: AskOptions;
  /** Hazards of the specimen that the method cannot know. */
  hazards: readonly Hazard[];
  /** Names of assumed figures that the requester has confirmed. */
  confirmed: readonly string[];
}

export interface AskOptions {
  /** A knife edge or clamp may touch the specimen. */
  contactExtensometer: boolean;
  /** Crosshead strain is accepted where the method does not demand an extensometer. */
  crossheadStrain: boolean;
  /** Deviation agreed with the requester: next lower force class is enough. */
  lowerForceClass: boolean;
}

/** One question of the request form, as the chosen method asks it. */
export interface AskField {
  /** Path in the ask, e.g. `geometry.widthMm`. */
  field: string;
  label: string;
  type: 'number' | 'choice' | 'choices' | 'flag' | 'band';
  /** Name of the quantity in libs/units; absent for a pure number, choice or flag. */
  quantity?: string;
  /** Internal unit of value, min, max and usual. */
  unit?: string;
  min?: number;
  max?: number;
  usual?: number;
  choices?: readonly { value: string; label: string }[];
  /** Shown only for these shapes. */
  shapes?: readonly Shape[];
  required: boolean;
  help: string;
}

/** Band that the library's or the declared strength gives, with where it came from. */
export interface StrengthUsed extends Band {
  property: StrengthProperty;
  unit: string;
  source: string;
  declared: boolean;
  /** Another property, or another temperature, stands in: the requester has to confirm it. */
  assumed: boolean;
}
