import type { Ask, Geometry } from '#libs/matching/src/index.js';

/** What a batch keeps of an ask: method, material and number of specimens stand in columns of their own. */
export type AskPart = Omit<Ask, 'methodId' | 'methodVersion' | 'materialId' | 'specimens' | 'modulusMPa'>;

/** An ask with the usual answers filled in; every figure in mm, N, MPa, °C, mm/min, N·m. */
export function ask(geometry: Geometry, results: readonly string[], rest: Partial<AskPart> = {}): AskPart {
  return {
    strength: null,
    peak: null,
    geometry,
    endShape: 'flat',
    temperatureC: null,
    results,
    speedMmPerMin: null,
    travelMm: null,
    options: { contactExtensometer: true, crossheadStrain: true, lowerForceClass: false },
    hazards: [],
    confirmed: ['peakHigh', 'smallest', 'travel', 'speed'],
    ...rest,
  };
}

/** Moulded dumb-bell, ISO 527-2 type 1A. */
export const dumbBell = (rest: Partial<AskPart> = {}): AskPart =>
  ask(
    {
      shape: 'rectangle',
      widthMm: 10,
      thicknessMm: 4,
      gaugeLengthMm: 75,
      parallelLengthMm: 80,
      gripSeparationMm: 115,
      endWidthMm: 20,
      lengthMm: 170,
    },
    ['modulus', 'peak-stress', 'strain-at-break'],
    { speedMmPerMin: 5, ...rest },
  );

/** The same in the chamber, with the gauge length of 50 mm that ISO 527-2 allows: the extensometer for the cold has no other. */
export function dumbBellAt(temperatureC: number): AskPart {
  const { geometry, ...rest } = dumbBell({ temperatureC });
  return { ...rest, geometry: { ...geometry, gaugeLengthMm: 50 } };
}

/** Turned round bar, proportional: L0 = 5·d0 (ISO 6892-1). */
export const roundBar = (diameterMm: number, endThicknessMm: number, rest: Partial<AskPart> = {}): AskPart =>
  ask(
    {
      shape: 'round',
      diameterMm,
      gaugeLengthMm: diameterMm <= 5 ? 25 : 25 * Math.max(1, Math.floor(diameterMm / 5)),
      parallelLengthMm: diameterMm * 6 + 25,
      gripSeparationMm: diameterMm * 6 + 50,
      endThicknessMm,
      lengthMm: diameterMm * 6 + 150,
    },
    ['offset-yield', 'peak-stress', 'elongation-after-fracture'],
    { endShape: 'round', ...rest },
  );

export const flatBar = (widthMm: number, thicknessMm: number, rest: Partial<AskPart> = {}): AskPart =>
  ask(
    {
      shape: 'rectangle',
      widthMm,
      thicknessMm,
      gaugeLengthMm: 50,
      parallelLengthMm: 75,
      gripSeparationMm: 100,
      endWidthMm: 20,
      lengthMm: 200,
    },
    ['offset-yield', 'peak-stress', 'elongation-after-fracture'],
    rest,
  );

/** Ravelled strip of fabric, 50 mm wide (ISO 13934-1). */
export const strip = (rest: Partial<AskPart> = {}): AskPart =>
  ask(
    { shape: 'strip', widthMm: 50, thicknessMm: 0.3, gripSeparationMm: 200, lengthMm: 350 },
    ['peak-load', 'strain-at-peak'],
    rest,
  );

/** Trouser tear of fabric; the force is declared. */
export const trousers = (low: number, high: number): AskPart =>
  ask({ shape: 'strip', widthMm: 50, thicknessMm: 0.2, gripSeparationMm: 100, lengthMm: 200 }, ['mean-tear-peaks'], {
    peak: { low, high },
    travelMm: 200,
  });

/** Rubber dumb-bell, ISO 37 type 1. */
export const rubberDumbBell = (rest: Partial<AskPart> = {}): AskPart =>
  ask(
    {
      shape: 'rectangle',
      widthMm: 6.2,
      thicknessMm: 2,
      gaugeLengthMm: 25,
      parallelLengthMm: 33,
      gripSeparationMm: 65,
      endWidthMm: 25,
      lengthMm: 115,
    },
    ['peak-stress', 'strain-at-break'],
    rest,
  );

export const lap = (widthMm: number, overlapMm: number, thicknessMm: number, rest: Partial<AskPart> = {}): AskPart =>
  ask(
    { shape: 'rectangle', widthMm, overlapMm, thicknessMm, gripSeparationMm: 112, lengthMm: 178 },
    ['peak-stress'],
    rest,
  );

export const tPeel = (rest: Partial<AskPart> = {}): AskPart =>
  ask({ shape: 'strip', widthMm: 25, lengthMm: 150, thicknessMm: 0.6, gripSeparationMm: 60 }, ['mean-peel'], rest);

export const beam = (rest: Partial<AskPart> = {}): AskPart =>
  ask({ shape: 'rectangle', widthMm: 10, thicknessMm: 4, spanMm: 64, lengthMm: 80 }, ['modulus', 'peak-stress'], rest);

export const prism = (sideMm: number, heightMm: number, rest: Partial<AskPart> = {}): AskPart =>
  ask({ shape: 'rectangle', widthMm: sideMm, thicknessMm: sideMm, heightMm }, ['stress-at-strain'], rest);

/** A part that is pulled between its attachments, force declared in N. */
export const pull = (
  lengthMm: number,
  low: number,
  high: number,
  travelMm: number,
  rest: Partial<AskPart> = {},
): AskPart =>
  ask({ shape: 'component', gripSeparationMm: lengthMm, widthMm: 40, thicknessMm: 10 }, ['peak-load', 'stiffness'], {
    peak: { low, high },
    travelMm,
    speedMmPerMin: 20,
    ...rest,
  });

export const push = (
  heightMm: number,
  low: number,
  high: number,
  travelMm: number,
  rest: Partial<AskPart> = {},
): AskPart =>
  ask({ shape: 'component', heightMm, widthMm: 60, thicknessMm: 60 }, ['peak-load', 'stiffness'], {
    peak: { low, high },
    travelMm,
    speedMmPerMin: 10,
    ...rest,
  });

export const cord = (diameterMm: number, low: number, high: number, travelMm = 150): AskPart =>
  ask({ shape: 'component', gripSeparationMm: 500, diameterMm }, ['peak-load'], {
    peak: { low, high },
    travelMm,
    speedMmPerMin: 250,
    endShape: 'cord',
  });

/** Torque in N·m. */
export const boltTorque = (coreMm: number, acrossFlatsMm: number, low: number, high: number): AskPart =>
  ask(
    { shape: 'round', diameterMm: coreMm, endThicknessMm: acrossFlatsMm, gripSeparationMm: 20, lengthMm: 40 },
    ['peak-load'],
    {
      peak: { low, high },
      endShape: 'hexagon',
    },
  );
