export type MaterialGroup =
  | 'metal'
  | 'plastic'
  | 'composite'
  | 'elastomer'
  | 'foam'
  | 'concrete'
  | 'wood'
  | 'film'
  | 'ceramic'
  | 'adhesive'
  | 'packaging'
  | 'textile';

export type StrengthProperty = 'tensile' | 'compressive' | 'flexural' | 'shear' | 'peel' | 'tear' | 'toughness';

/** Strength as it is found in practice, not a limit of a standard. Low, typical and high in `unit`. */
export interface StrengthBand {
  property: StrengthProperty;
  low: number;
  typical: number;
  high: number;
  unit: 'MPa' | 'N/mm' | 'MPa·√m';
  source: string;
  confidence: string;
}

export interface Material {
  id: string;
  name: string;
  group: MaterialGroup;
  strengths: readonly StrengthBand[];
  /** Young's modulus, MPa; null where it is not used for a test of this material. */
  modulusMPa: { low: number; high: number } | null;
  /** Elongation at break, as a fraction of the gauge length. */
  breakStrain: { low: number; high: number } | null;
  /** Breaks without warning, may throw fragments. */
  brittle: boolean;
  source: string;
  confidence: string;
}
