import type { SaveItemBody } from '#libs/contract/src/index.js';

const CLEVIS_15 = { type: 'clevis', sizeMm: 15, gender: 'female' };
const CLEVIS_15_IN = { type: 'clevis', sizeMm: 15, gender: 'male' };
const ROOM = { temperatureMinC: 10, temperatureMaxC: 35, utilities: [] };
const rated = (rating: number) => ({
  tension: [{ temperatureC: 23, rating }],
  compression: [{ temperatureC: 23, rating }],
});

export const FRAME_10KN: SaveItemBody = {
  ...{ tag: 'UF-10', kind: 'frame', name: 'Table-top frame 10 kN', model: 'Northmoor two-column', place: 'Bay 2' },
  ...{ massKg: 140, lengthMm: 0, ratings: {}, ...ROOM, needsCalibration: false },
  details: {
    ...{ tensionCapacityN: 10_000, compressionCapacityN: 10_000, torqueCapacityNm: 0 },
    ...{ openingMinMm: 40, openingMaxMm: 1200, travelMm: 1100, columnClearanceMm: 420 },
    ...{
      speedMinMmPerMin: 0.001,
      speedMaxMmPerMin: 1000,
      speedLimits: [],
      rotationMinDegPerMin: 0,
      rotationMaxDegPerMin: 0,
    },
    ...{ stiffnessNPerMm: 20_000, crossheadCoupling: CLEVIS_15, baseCoupling: CLEVIS_15, cellPositions: ['crosshead'] },
    channels: [
      { kind: 'force', count: 1 },
      { kind: 'strain', count: 1 },
    ],
    ...{
      utilitiesAtFrame: ['compressed-air'],
      guardEnergyJ: 200,
      guardInterlocked: true,
      controlModes: ['position', 'force'],
    },
  },
};

export const CELL_5KN: SaveItemBody = {
  ...{ tag: 'LC-5K-1', kind: 'load-cell', name: 'Load cell 5 kN', model: 'Northmoor S-beam', place: 'Drawer 3' },
  ...{ massKg: 0.9, lengthMm: 60, ratings: {}, ...ROOM, needsCalibration: true, calibrationIntervalMonths: 12 },
  details: {
    ...{ capacityN: 5000, torqueCapacityNm: 0, directions: ['tension', 'compression'], overloadPct: 150 },
    ...{ frameCoupling: CLEVIS_15_IN, specimenCoupling: CLEVIS_15 },
  },
};

export const GRIP_5KN: SaveItemBody = {
  ...{ tag: 'GP-5K-1', kind: 'grip', name: 'Wedge grips 5 kN', model: 'Northmoor wedge', place: 'Shelf 1' },
  ...{ massKg: 1.2, lengthMm: 110, ratings: rated(5000), ...ROOM, needsCalibration: false },
  details: {
    ...{ side: 'pair', coupling: CLEVIS_15_IN, outsideWidthMm: 80 },
    ...{
      action: 'wedge',
      acceptedEnds: ['flat'],
      openingMinMm: 0,
      openingMaxMm: 12,
      faceWidthMm: 30,
      gripLengthMm: 40,
    },
    ...{ fixedFaceShape: 'flat', fixedFaceSurface: 'fine-serrated' },
  },
};
