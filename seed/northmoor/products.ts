/** How a figure scatters: from piece to piece, and (in history) from lot to lot, as fractions of the mean. */
export interface Scatter {
  mean: number;
  pieces: number;
  lots?: number;
  unit: string;
}

/** What the lab finds when it tests something often: figures by result key, and dimensions in mm with their spread in mm. */
export interface Product {
  results: Readonly<Record<string, Scatter>>;
  dimensions: Readonly<Record<string, readonly [mean: number, spread: number]>>;
}

/** Invented but ordinary figures and scatter for such materials (common practice, no source). Strain as a fraction (unit 1). */
export const PRODUCTS = {
  pannierBracketPa6: {
    results: {
      modulus: { mean: 8900, pieces: 0.009, lots: 0.002, unit: 'MPa' },
      'peak-stress': { mean: 152, pieces: 0.004, lots: 0.0008, unit: 'MPa' },
      'strain-at-break': { mean: 0.036, pieces: 0.05, lots: 0.02, unit: '1' },
    },
    dimensions: { widthMm: [10.02, 0.02], thicknessMm: [4.01, 0.015] },
  },
  steererSteel: {
    results: {
      'offset-yield': { mean: 1104, pieces: 0.005, lots: 0.006, unit: 'MPa' },
      'peak-stress': { mean: 1192, pieces: 0.003, lots: 0.004, unit: 'MPa' },
      'elongation-after-fracture': { mean: 0.131, pieces: 0.04, lots: 0.03, unit: '1' },
    },
    dimensions: { diameterMm: [8, 0.008] },
  },
  steererSteel6: {
    results: {
      'offset-yield': { mean: 1110, pieces: 0.005, lots: 0.006, unit: 'MPa' },
      'peak-stress': { mean: 1196, pieces: 0.003, lots: 0.004, unit: 'MPa' },
      'elongation-after-fracture': { mean: 0.129, pieces: 0.04, lots: 0.03, unit: '1' },
    },
    dimensions: { diameterMm: [6, 0.008] },
  },
  tentFabric: {
    results: {
      'peak-load': { mean: 1180, pieces: 0.025, lots: 0.012, unit: 'N' },
      'strain-at-peak': { mean: 0.262, pieces: 0.03, lots: 0.015, unit: '1' },
    },
    dimensions: { widthMm: [50, 0.2] },
  },
  treadRubber: {
    results: {
      'peak-stress': { mean: 17.4, pieces: 0.035, lots: 0.02, unit: 'MPa' },
      'strain-at-break': { mean: 4.65, pieces: 0.03, lots: 0.02, unit: '1' },
    },
    dimensions: { widthMm: [6.2, 0.03], thicknessMm: [2.02, 0.04] },
  },
  lugBond: {
    results: { 'peak-stress': { mean: 24.6, pieces: 0.055, lots: 0.02, unit: 'MPa' } },
    dimensions: { widthMm: [25.1, 0.1], overlapMm: [12.6, 0.15] },
  },
  fabricLaminate: {
    results: { 'mean-peel': { mean: 2.85, pieces: 0.07, lots: 0.03, unit: 'N/mm' } },
    dimensions: { widthMm: [25, 0.15] },
  },
  pannierHook: {
    results: {
      'peak-load': { mean: 1460, pieces: 0.045, lots: 0.02, unit: 'N' },
      stiffness: { mean: 212, pieces: 0.05, lots: 0.02, unit: 'N/mm' },
    },
    dimensions: {},
  },
  spacerPa6: {
    results: {
      modulus: { mean: 8300, pieces: 0.02, lots: 0.01, unit: 'MPa' },
      'peak-stress': { mean: 236, pieces: 0.014, lots: 0.006, unit: 'MPa' },
    },
    dimensions: { widthMm: [10.01, 0.02], thicknessMm: [4.0, 0.02] },
  },
  saddleFoam: {
    results: { 'stress-at-strain': { mean: 0.0082, pieces: 0.04, lots: 0.02, unit: 'MPa' } },
    dimensions: { widthMm: [100.2, 0.4], thicknessMm: [100.1, 0.4] },
  },
  stemBolt: {
    results: { 'peak-load': { mean: 15.2, pieces: 0.03, lots: 0.012, unit: 'N·m' } },
    dimensions: { diameterMm: [4.13, 0.01] },
  },
} as const satisfies Record<string, Product>;
