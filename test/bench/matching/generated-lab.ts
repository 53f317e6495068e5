import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import type { Ask, Coupling, Item, ItemCommon, Lab, Ratings, Side, TimeWindow } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { Chance } from '#test/properties/matching/chance.js';

export const PERIOD: TimeWindow = { startMs: 1_800_000_000_000, endMs: 1_800_000_000_000 + 28 * MS_PER_DAY };

/** What each frame brings with it, in the proportions of a lab with 60 frames: 200 cells, 600 grips and fixtures, 60 extensometers. */
const PER_FRAME = { cells: 200 / 60, holders: 600 / 60, extensometers: 1 };

/** Frames as labs buy them: a class has a capacity, N, a coupling size, mm, and a share of the lab. */
const CLASSES = [
  { capacityN: 500, sizeMm: 8, share: 10 },
  { capacityN: 1000, sizeMm: 15, share: 10 },
  { capacityN: 5000, sizeMm: 15, share: 20 },
  { capacityN: 10_000, sizeMm: 20, share: 20 },
  { capacityN: 50_000, sizeMm: 30, share: 20 },
  { capacityN: 100_000, sizeMm: 60, share: 14 },
  { capacityN: 250_000, sizeMm: 60, share: 6 },
];
const STEPS = [10, 50, 100, 250, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000, 250_000];

/** A believable lab of so many frames, by number: mixed classes, pools of equal units, some faults, lapses and promises. */
export function generatedLab(frames: number, seed: number): Lab {
  const chance = new Chance(seed);
  const items: Item[] = [
    ...times(frames, (n) => frame(chance, n)),
    ...times(Math.round(frames * PER_FRAME.cells), (n) => cell(chance, n)),
    ...holders(chance, Math.round(frames * PER_FRAME.holders)),
    ...times(Math.round(frames * 0.7), (n) => adapter(chance, n)),
    ...times(Math.round(frames * PER_FRAME.extensometers), (n) => extensometer(chance, n)),
    ...times(Math.max(1, Math.round(frames / 12)), (n) => chamber(chance, n)),
    ...times(Math.max(1, Math.round(frames / 10)), (n) => guard(chance, n)),
    ...times(Math.max(1, Math.round(frames / 10)), (n) => thermocouple(n)),
  ];
  const hanging = items.filter(({ kind }) => kind === 'load-cell' || kind === 'grip').slice(0, frames * 2);
  const rigs = times(frames, (n) => ({
    frameId: `frame-${n}`,
    itemIds: hanging.filter((_, i) => i % frames === n).map(({ id }) => id),
    chamberC: null,
  }));
  const technicians = times(Math.max(2, Math.round(frames / 2)), (n) => ({
    id: `t-${n}`,
    methodIds: chance.some(METHODS).map(({ id }) => id),
    windows: shifts(n % 2),
  }));
  return { items, rigs, technicians };
}

/** An ask of the trade by number: method, size of the job and temperature as they come. */
export function generatedAsk(seed: number): Ask {
  const chance = new Chance(seed ^ 0x2545f491);
  const [methodId, geometry, lowN, highN, results] = chance.one(ASKS);
  const low = lowN * (highN / lowN) ** chance.next();
  return {
    methodId,
    methodVersion: 1,
    materialId: null,
    strength: null,
    peak: { low, high: low * (1.1 + chance.next()) },
    modulusMPa: { low: 2000, high: 4000 },
    geometry,
    endShape: 'flat',
    specimens: 5,
    temperatureC: chance.often(10) ? chance.one([-30, 60, 120]) : null,
    results,
    speedMmPerMin: null,
    travelMm: methodId === 'iso-844' ? 7 : chance.whole(2, 60),
    options: { contactExtensometer: chance.often(80), crossheadStrain: chance.often(50), lowerForceClass: false },
    hazards: [],
    confirmed: [],
  };
}

const ASKS: readonly (readonly [string, Ask['geometry'], number, number, string[]])[] = [
  [
    'iso-527-2',
    { shape: 'rectangle', widthMm: 10, thicknessMm: 4, parallelLengthMm: 80, gripSeparationMm: 115, endWidthMm: 20 },
    400,
    6000,
    ['modulus', 'peak-stress'],
  ],
  [
    'iso-6892-1',
    { shape: 'rectangle', widthMm: 12.5, thicknessMm: 3, parallelLengthMm: 75, gripSeparationMm: 100, endWidthMm: 20 },
    8000,
    120_000,
    ['offset-yield', 'peak-stress'],
  ],
  [
    'iso-178',
    { shape: 'rectangle', widthMm: 10, thicknessMm: 4, spanMm: 64, lengthMm: 80 },
    50,
    400,
    ['modulus', 'peak-stress'],
  ],
  [
    'iso-37',
    { shape: 'rectangle', widthMm: 6.2, thicknessMm: 2, parallelLengthMm: 33, gripSeparationMm: 65 },
    40,
    400,
    ['peak-stress'],
  ],
  ['iso-844', { shape: 'rectangle', widthMm: 100, thicknessMm: 100, heightMm: 50 }, 500, 8000, ['stress-at-strain']],
  [
    'astm-d1002',
    { shape: 'rectangle', widthMm: 25.4, overlapMm: 12.7, thicknessMm: 1.62, gripSeparationMm: 112 },
    2000,
    12_000,
    ['peak-stress'],
  ],
  ['iso-13934-1', { shape: 'strip', widthMm: 50, gripSeparationMm: 200 }, 300, 3000, ['peak-load']],
];

function times<T>(count: number, make: (n: number) => T): T[] {
  return Array.from({ length: count }, (_, n) => make(n));
}

/** Weekdays of eight hours for four weeks, early or late. */
function shifts(late: number): TimeWindow[] {
  return times(28, (day) => day)
    .filter((day) => day % 7 < 5)
    .map((day) => ({
      startMs: PERIOD.startMs + day * MS_PER_DAY + late * 8 * 3_600_000,
      endMs: PERIOD.startMs + day * MS_PER_DAY + (late + 1) * 8 * 3_600_000,
    }));
}

function common<K extends Item['kind']>(
  chance: Chance,
  kind: K,
  n: number,
  massKg: number,
  lengthMm: number,
): Omit<ItemCommon<K, never>, 'details'> {
  return {
    kind,
    id: `${kind}-${n}`,
    tag: `${kind}-${String(n).padStart(4, '0')}`,
    name: kind,
    model: '',
    state: chance.often(96) ? 'in-service' : 'faulty',
    place: '',
    massKg,
    lengthMm,
    ratings: {},
    temperatureMinC: chance.often(30) ? -60 : 10,
    temperatureMaxC: chance.often(30) ? 200 : 40,
    utilities: [],
    needsCalibration: false,
    calibrations: [],
    heldWindows: chance.often(4)
      ? [{ startMs: PERIOD.startMs + 5 * MS_PER_DAY, endMs: PERIOD.startMs + 12 * MS_PER_DAY }]
      : [],
  };
}

function classOf(chance: Chance): (typeof CLASSES)[number] {
  let left = chance.next() * CLASSES.reduce((sum, { share }) => sum + share, 0);
  return CLASSES.find(({ share }) => (left -= share) < 0) ?? CLASSES[0]!;
}

const flange = (sizeMm: number): Coupling => ({ type: 'flange', sizeMm: 4 * sizeMm, gender: 'plain' });
const stud = (sizeMm: number): Coupling => ({ type: 'clevis', sizeMm, gender: 'male' });
const socket = (sizeMm: number): Coupling => ({ type: 'clevis', sizeMm, gender: 'female' });
const rated = (rating: number, ...directions: ('tension' | 'compression')[]): Ratings =>
  Object.fromEntries(
    directions.map((direction) => [
      direction,
      [
        { temperatureC: 23, rating },
        { temperatureC: 200, rating: rating * 0.7 },
      ],
    ]),
  );

function frame(chance: Chance, n: number): Item {
  const { capacityN, sizeMm } = classOf(chance);
  const tall = chance.often(30);
  return {
    ...common(chance, 'frame', n, 500, 0),
    details: {
      tensionCapacityN: capacityN,
      compressionCapacityN: capacityN,
      torqueCapacityNm: 0,
      openingMinMm: 50,
      openingMaxMm: tall ? 1800 : 1150,
      travelMm: tall ? 1700 : 1050,
      columnClearanceMm: capacityN <= 5000 ? 220 : 460,
      speedMinMmPerMin: 0.005,
      speedMaxMmPerMin: capacityN >= 100_000 ? 500 : 1000,
      speedLimits: [],
      rotationMinDegPerMin: 0,
      rotationMaxDegPerMin: 0,
      stiffnessNPerMm: capacityN * 2,
      crossheadCoupling: flange(sizeMm),
      baseCoupling: stud(sizeMm),
      cellPositions: ['crosshead'],
      channels: [
        { kind: 'force', count: 1 },
        { kind: 'strain', count: 2 },
        { kind: 'temperature', count: 1 },
        { kind: 'video', count: chance.whole(0, 1) },
      ],
      utilitiesAtFrame: chance.often(80) ? ['compressed-air', 'power-400v'] : ['power-400v'],
      guardEnergyJ: chance.one([0, 200, 5000]),
      guardInterlocked: true,
      controlModes: ['position', 'force'],
    },
  };
}

const certificate = (
  direction: 'tension' | 'compression' | 'extension',
  chance: Chance,
  from: number,
  to: number,
  className: string,
) => ({
  direction,
  standard: direction === 'extension' ? 'ISO 9513' : 'ISO 7500-1',
  className,
  from,
  to,
  validFromMs: PERIOD.startMs - 200 * MS_PER_DAY,
  dueMs: PERIOD.startMs + (chance.often(4) ? -3 : chance.often(10) ? 9 : 150) * MS_PER_DAY,
});

function cell(chance: Chance, n: number): Item {
  const { capacityN: most, sizeMm } = classOf(chance);
  const fitting = STEPS.filter((step) => step <= most && step >= most / 200);
  const capacityN = chance.one(fitting);
  const className = chance.often(70) ? '0.5' : '1';
  return {
    ...common(chance, 'load-cell', n, 0.5 + sizeMm / 8, 60 + sizeMm),
    needsCalibration: true,
    calibrations: [
      certificate('tension', chance, capacityN / 250, capacityN, className),
      certificate('compression', chance, capacityN / 100, capacityN, className),
    ],
    details: {
      capacityN,
      torqueCapacityNm: 0,
      directions: ['tension', 'compression'],
      overloadPct: 150,
      frameCoupling: flange(sizeMm),
      specimenCoupling: stud(sizeMm),
    },
  };
}

/** Grips with their faces, fixtures and platens, so many pieces in all. */
function holders(chance: Chance, count: number): Item[] {
  return times(count, (n) => {
    const draw = chance.next();
    if (draw < 0.45) return grip(chance, n);
    if (draw < 0.75) return face(chance, n);
    return draw < 0.9 ? fixture(chance, n) : platen(chance, n);
  });
}

const end = (sizeMm: number, outsideWidthMm: number) => ({
  side: 'pair' as Side,
  coupling: socket(sizeMm),
  lowerMassKg: null,
  lowerLengthMm: null,
  outsideWidthMm,
});

function grip(chance: Chance, n: number): Item {
  const { capacityN, sizeMm } = classOf(chance);
  const air = capacityN <= 10_000 && chance.often(50);
  return {
    ...common(chance, 'grip', n, 0.3 + capacityN / 4000, 70 + sizeMm * 2),
    utilities: air ? ['compressed-air'] : [],
    ratings: rated(capacityN, 'tension'),
    details: {
      ...end(sizeMm, 60 + sizeMm * 3),
      action: air ? 'pneumatic' : 'wedge',
      acceptedEnds: ['flat', 'round'],
      openingMinMm: 0,
      openingMaxMm: chance.one([8, 14, 20]),
      faceWidthMm: chance.one([30, 60]),
      gripLengthMm: 50,
      faceSlot: `seat-${sizeMm}`,
      fixedFaceShape: null,
      fixedFaceSurface: null,
    },
  };
}

function face(chance: Chance, n: number): Item {
  const { capacityN, sizeMm } = classOf(chance);
  return {
    ...common(chance, 'jaw-face', n, 0.2, 0),
    ratings: rated(capacityN * 1.2, 'tension'),
    details: {
      slot: `seat-${sizeMm}`,
      shape: chance.often(75) ? 'flat' : 'vee',
      surface: chance.one(['serrated', 'fine-serrated', 'diamond', 'rubber', 'smooth']),
      widthMm: chance.one([25, 30, 60]),
      openingMinMm: 0,
      openingMaxMm: chance.one([6, 10, 18]),
    },
  };
}

function fixture(chance: Chance, n: number): Item {
  const { capacityN, sizeMm } = classOf(chance);
  return {
    ...common(chance, 'fixture', n, 1 + sizeMm / 6, 80),
    ratings: rated(capacityN / 2, 'compression'),
    details: {
      ...end(sizeMm, 180),
      purposes: chance.one([['flexure-3'], ['flexure-3', 'flexure-4-half'], ['component-pull'], ['peel-90']]),
      spanMinMm: chance.one([16, 40]),
      spanMaxMm: chance.one([100, 180, 400]),
      noseRadiusMm: 5,
      supportRadiusMm: 5,
      specimenWidthMaxMm: 60,
      specimenThicknessMaxMm: 40,
    },
  };
}

function platen(chance: Chance, n: number): Item {
  const { capacityN, sizeMm } = classOf(chance);
  return {
    ...common(chance, 'platen', n, 1 + sizeMm / 8, 50),
    ratings: rated(capacityN, 'compression'),
    details: { ...end(sizeMm, 160), diameterMm: chance.one([60, 150, 200]), sphericalSeat: chance.often(50) },
  };
}

function adapter(chance: Chance, n: number): Item {
  const sizes = [8, 15, 20, 30, 60];
  const at = chance.whole(0, sizes.length - 2);
  const [small, large] = [sizes[at]!, sizes[at + 1]!];
  const down = chance.often(60);
  return {
    ...common(chance, 'adapter', n, 0.5, 50),
    ratings: rated([1000, 5000, 10_000, 50_000][at]!, 'tension', 'compression'),
    details: { ends: [socket(down ? large : small), stud(down ? small : large)] },
  };
}

function extensometer(chance: Chance, n: number): Item {
  const deflection = chance.often(20);
  return {
    ...common(chance, 'extensometer', n, 0.2, 0),
    needsCalibration: true,
    calibrations: [certificate('extension', chance, 0, 25, chance.one(['0.5', '1', '1']))],
    details: {
      gaugeLengthsMm: deflection ? [1] : chance.one([[25], [50], [50, 75], [25, 50, 75, 100]]),
      travelPlusMm: 25,
      travelMinusMm: 5,
      measures: deflection ? 'deflection' : 'axial',
      contact: chance.often(80),
      channel: chance.often(80) ? 'strain' : 'video',
      specimenMinMm: 0,
      specimenMaxMm: 30,
    },
  };
}

function chamber(chance: Chance, n: number): Item {
  const details = {
    minC: chance.one([-70, 30]),
    maxC: 250,
    insideWidthMm: 240,
    insideHeightMm: 500,
    fitsClearanceMinMm: 400,
    fitsClearanceMaxMm: 500,
    rampCPerMin: 3,
    soakBaseMin: 30,
    soakMinPerMm: 5,
  };
  return { ...common(chance, 'chamber', n, 60, 0), details };
}

function guard(chance: Chance, n: number): Item {
  const small = chance.often(50);
  const details = {
    energyJ: small ? 150 : 10_000,
    interlocked: true,
    fitsClearanceMinMm: small ? 100 : 300,
    fitsClearanceMaxMm: small ? 300 : 600,
  };
  return { ...common(chance, 'guard', n, 10, 0), details };
}

function thermocouple(n: number): Item {
  const chance = new Chance(n);
  return {
    ...common(chance, 'transducer', n, 0.01, 0),
    details: { measures: 'temperature', channel: 'temperature', rangeFrom: -100, rangeTo: 300 },
  };
}
