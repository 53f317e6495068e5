import type { ExtensionClass } from './extension-classes.js';

/** What a class allows at one extension, in mm. */
export interface AllowedExtension {
  biasMm: number;
  resolutionMm: number;
}

/**
 * The larger of the relative and the absolute limit: ISO 9513:2012 table 2, ASTM E83 table 1.
 *
 * @param extensionMm size of the extension, at least 0
 * @param gaugeLengthMm what ASTM's strains are referred to, above 0
 */
export function allowedExtension(limits: ExtensionClass, extensionMm: number, gaugeLengthMm: number): AllowedExtension {
  return {
    biasMm: Math.max((limits.biasPct / 100) * extensionMm, limits.biasMm ?? limits.biasStrain! * gaugeLengthMm),
    resolutionMm: Math.max(
      (limits.resolutionPct / 100) * extensionMm,
      limits.resolutionMm ?? limits.resolutionStrain! * gaugeLengthMm,
    ),
  };
}
