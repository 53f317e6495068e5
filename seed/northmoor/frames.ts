import type { Coupling, FrameDetails } from '#libs/matching/src/index.js';
import { bore, flange, shaft, stud, UNCALIBRATED, YEARLY } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

/**
 * The nine frames. Invented machines with ordinary figures of their size (common practice, no source).
 * Couplings come in families, so that parts of one size meet: up to 5 kN on 15 mm pins under a 60 mm flange,
 * 10 to 50 kN on 30 mm pins under 100 mm, above on 60 mm pins under 160 mm.
 */
export const FRAMES: DemoItem<'frame'>[] = [
  single('FR-0500', 'Small single column 500 N', 'Cairnlight S05', 500, {
    openingMaxMm: 780,
    travelMm: 740,
    speedMaxMmPerMin: 1500,
  }),
  single('FR-1K', 'Single column 1 kN', 'Cairnlight S1', 1000, {
    openingMaxMm: 1150,
    travelMm: 1100,
    speedMaxMmPerMin: 2500,
  }),
  single('FR-5K', 'Single column 5 kN', 'Cairnlight S5', 5000, {
    openingMaxMm: 1100,
    travelMm: 1050,
    speedMaxMmPerMin: 1000,
  }),
  twin('FR-10K', 'Table-top 10 kN', 'Staithe T10', 10_000, stud(30), { openingMaxMm: 1180, travelMm: 1130 }),
  twin('FR-30K', 'Table-top 30 kN with room for the chamber', 'Staithe T30', 30_000, stud(30), {
    openingMaxMm: 1650,
    travelMm: 1600,
    columnClearanceMm: 460,
    channels: [
      { kind: 'force', count: 1 },
      { kind: 'strain', count: 2 },
      { kind: 'temperature', count: 2 },
      { kind: 'video', count: 1 },
    ],
    utilitiesAtFrame: ['compressed-air', 'power-400v', 'liquid-nitrogen'],
  }),
  twin('FR-50K', 'Table-top 50 kN', 'Staithe T50', 50_000, stud(30), {
    openingMaxMm: 1650,
    travelMm: 1600,
    columnClearanceMm: 460,
    channels: [
      { kind: 'force', count: 1 },
      { kind: 'strain', count: 2 },
      { kind: 'temperature', count: 1 },
      { kind: 'video', count: 1 },
    ],
    utilitiesAtFrame: ['compressed-air', 'hydraulics', 'power-400v'],
  }),
  twin('FR-100K', 'Floor frame 100 kN', 'Staithe F100', 100_000, stud(60), floor(1950, 600)),
  twin('FR-250K', 'Floor frame 250 kN', 'Staithe F250', 250_000, stud(60), floor(2150, 650)),
  {
    kind: 'frame',
    tag: 'FR-T200',
    name: 'Torsion bench 200 N·m',
    model: 'Whorl H2',
    serialNumber: 'WH2-0113',
    place: 'Bay T',
    massKg: 210,
    lengthMm: 0,
    ratings: {},
    temperatureMinC: 10,
    temperatureMaxC: 35,
    utilities: [],
    ...UNCALIBRATED,
    details: {
      tensionCapacityN: 0,
      compressionCapacityN: 0,
      torqueCapacityNm: 200,
      openingMinMm: 60,
      openingMaxMm: 900,
      travelMm: 840,
      columnClearanceMm: 320,
      speedMinMmPerMin: 0,
      speedMaxMmPerMin: 0,
      speedLimits: [],
      rotationMinDegPerMin: 0.5,
      rotationMaxDegPerMin: 1080,
      stiffnessNPerMm: null,
      crossheadCoupling: shaft(20),
      baseCoupling: bore(40),
      cellPositions: ['base'],
      channels: [
        { kind: 'torque', count: 1 },
        { kind: 'displacement', count: 1 },
      ],
      utilitiesAtFrame: [],
      guardEnergyJ: 150,
      guardInterlocked: true,
      controlModes: ['position', 'force'],
    },
  },
];

function single(
  tag: string,
  name: string,
  model: string,
  capacityN: number,
  details: Partial<FrameDetails>,
): DemoItem<'frame'> {
  return frame(tag, name, model, capacityN, {
    openingMinMm: 40,
    columnClearanceMm: 200,
    stiffnessNPerMm: capacityN * 1.4,
    crossheadCoupling: flange(60),
    baseCoupling: stud(15),
    channels: [
      { kind: 'force', count: 1 },
      { kind: 'strain', count: 1 },
      { kind: 'video', count: 1 },
    ],
    utilitiesAtFrame: ['compressed-air'],
    ...details,
  });
}

function twin(
  tag: string,
  name: string,
  model: string,
  capacityN: number,
  base: Coupling,
  details: Partial<FrameDetails>,
): DemoItem<'frame'> {
  return frame(tag, name, model, capacityN, {
    openingMinMm: 60,
    columnClearanceMm: 420,
    speedMaxMmPerMin: 1000,
    speedLimits: [{ aboveForceN: capacityN * 0.5, speedMaxMmPerMin: 500 }],
    stiffnessNPerMm: 40_000 + capacityN,
    crossheadCoupling: flange(100),
    baseCoupling: base,
    channels: [
      { kind: 'force', count: 1 },
      { kind: 'strain', count: 2 },
      { kind: 'video', count: 1 },
    ],
    utilitiesAtFrame: ['compressed-air', 'power-400v'],
    guardEnergyJ: 600,
    guardInterlocked: true,
    ...details,
  });
}

function floor(openingMaxMm: number, columnClearanceMm: number): Partial<FrameDetails> {
  return {
    openingMinMm: 100,
    openingMaxMm,
    travelMm: openingMaxMm - 100,
    columnClearanceMm,
    speedMaxMmPerMin: 500,
    stiffnessNPerMm: 320_000,
    crossheadCoupling: flange(160),
    utilitiesAtFrame: ['compressed-air', 'hydraulics', 'power-400v'],
    guardEnergyJ: 4000,
  };
}

function frame(
  tag: string,
  name: string,
  model: string,
  capacityN: number,
  details: Partial<FrameDetails>,
): DemoItem<'frame'> {
  return {
    kind: 'frame',
    tag,
    name,
    model,
    serialNumber: `${model.replaceAll(/[^A-Z0-9]/g, '')}-${1000 + (capacityN % 997)}`,
    place: `Bay ${tag.slice(3)}`,
    massKg: 40 + capacityN / 120,
    lengthMm: 0,
    ratings: {},
    temperatureMinC: 10,
    temperatureMaxC: 35,
    utilities: [],
    ...YEARLY,
    details: {
      tensionCapacityN: capacityN,
      compressionCapacityN: capacityN,
      torqueCapacityNm: 0,
      openingMinMm: 40,
      openingMaxMm: 1000,
      travelMm: 960,
      columnClearanceMm: 200,
      speedMinMmPerMin: 0.005,
      speedMaxMmPerMin: 1000,
      speedLimits: [],
      rotationMinDegPerMin: 0,
      rotationMaxDegPerMin: 0,
      stiffnessNPerMm: null,
      crossheadCoupling: flange(60),
      baseCoupling: stud(15),
      cellPositions: ['crosshead'],
      channels: [],
      utilitiesAtFrame: [],
      guardEnergyJ: 0,
      guardInterlocked: false,
      controlModes: ['position', 'force', 'strain'],
      ...details,
    },
  };
}
