/**
 * Channels that a curve may carry. The unit is in the name: s, N, MPa, mm, fraction, N·m, degrees, °C.
 * `displacementMm` is the travel of the crosshead (or the deflection); `extensionMm` comes from an extensometer.
 */
export const CURVE_CHANNELS = [
  'timeS',
  'forceN',
  'stressMPa',
  'displacementMm',
  'extensionMm',
  'strain',
  'torqueNm',
  'angleDeg',
  'temperatureC',
] as const;

export type CurveChannel = (typeof CURVE_CHANNELS)[number];

/**
 * A recorded test: columns of equal length, `pointCount` values each, every value finite. `strainRows` is there where the extensometer
 * was taken off before the end: on later rows its channels hold their last value, which is no strain.
 */
export type Curve = { readonly pointCount: number; readonly strainRows?: number } & {
  readonly [channel in CurveChannel]?: Float64Array;
};
