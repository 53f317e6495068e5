import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import type {
  Ask,
  Calibration,
  Coupling,
  EndDetails,
  Item,
  ItemCommon,
  Lab,
  Ratings,
  TimeWindow,
} from '#libs/matching/src/index.js';
import { Chance } from './chance.js';

/** Four weeks from an arbitrary instant. */
export const PERIOD: TimeWindow = { startMs: 1_700_000_000_000, endMs: 1_700_000_000_000 + 28 * MS_PER_DAY };

const LOADS = [200, 500, 1000, 2000, 5000, 10_000, 50_000];
const TORQUES = [5, 20, 100, 500];
export const METHOD_IDS = ['iso-527-2', 'iso-178', 'iso-604', 'astm-e143', 'astm-c39', 'iso-8510-1', 'iso-37'] as const;

/** A small lab by number: everything in it is drawn so that rules pass and fail about as often. */
export function randomLab(seed: number): Lab {
  const chance = new Chance(seed);
  const items = [
    ...times(chance.whole(1, 3), (n) => frame(chance, n)),
    ...times(chance.whole(3, 6), (n) => cell(chance, n)),
    ...times(chance.whole(2, 4), (n) => grip(chance, n)),
    ...times(chance.whole(1, 2), (n) => face(chance, n)),
    ...times(chance.whole(1, 3), (n) => fixture(chance, n)),
    ...times(chance.whole(1, 3), (n) => platen(chance, n)),
    ...times(chance.whole(0, 3), (n) => adapter(chance, n)),
    ...times(chance.whole(0, 3), (n) => extensometer(chance, n)),
    ...times(chance.whole(0, 1), (n) => chamber(chance, n)),
    ...times(chance.whole(0, 1), (n) => guard(chance, n)),
    ...times(chance.whole(0, 1), (n) => thermocouple(chance, n)),
  ];
  const frames = items.filter(({ kind }) => kind === 'frame');
  const hangs = items.filter(({ kind }) => kind !== 'frame' && chance.often(30));
  const rigs = frames.map((each, n) => ({
    frameId: each.id,
    itemIds: hangs.filter((_, i) => i % frames.length === n).map(({ id }) => id),
    chamberC: null,
  }));
  return { items, rigs, technicians: times(2, (n) => technician(chance, n)) };
}

/** An ask by number, of one of the methods above, with figures that the methods allow. */
export function randomAsk(seed: number): Ask {
  const chance = new Chance(seed ^ 0x5bd1e995);
  const methodId = chance.one(METHOD_IDS);
  const low = chance.one([40, 100, 300, 800]) * (0.5 + chance.next());
  const torque = methodId === 'astm-e143';
  const peak = torque ? { low: low / 100, high: low / 50 } : { low, high: low * (1 + chance.next()) };
  return {
    methodId,
    methodVersion: 1,
    materialId: null,
    strength: null,
    peak,
    modulusMPa: chance.often(50) ? { low: 1500, high: 4000 } : null,
    geometry: {
      ...GEOMETRY[methodId],
      ...(methodId === 'iso-527-2' ? { widthMm: chance.whole(5, 25), thicknessMm: chance.whole(1, 6) } : {}),
    },
    endShape: torque ? 'round' : 'flat',
    specimens: 5,
    temperatureC: chance.often(25) ? chance.one([-30, 60, 120]) : null,
    results: chance.often(50) ? (RESULTS[methodId] ?? ['peak-stress']) : [RESULTS[methodId]?.at(-1) ?? 'peak-stress'],
    speedMmPerMin: null,
    travelMm: torque ? null : chance.one([2, 8, 20]),
    options: {
      contactExtensometer: chance.often(70),
      crossheadStrain: chance.often(50),
      lowerForceClass: chance.often(30),
    },
    hazards: chance.often(15) ? ['fragments'] : [],
    confirmed: [],
  };
}

const GEOMETRY: Record<(typeof METHOD_IDS)[number], Ask['geometry']> = {
  'iso-527-2': { shape: 'rectangle', widthMm: 10, thicknessMm: 4, parallelLengthMm: 80, gripSeparationMm: 115 },
  'iso-178': { shape: 'rectangle', widthMm: 10, thicknessMm: 4, spanMm: 64, lengthMm: 80 },
  'iso-604': { shape: 'rectangle', widthMm: 10, thicknessMm: 10, heightMm: 25 },
  'astm-e143': { shape: 'round', diameterMm: 10, gripSeparationMm: 150 },
  'astm-c39': { shape: 'round', diameterMm: 100, heightMm: 200 },
  'iso-8510-1': { shape: 'strip', widthMm: 25, lengthMm: 100, thicknessMm: 1, gripSeparationMm: 60 },
  'iso-37': { shape: 'rectangle', widthMm: 6.2, thicknessMm: 2, parallelLengthMm: 33, gripSeparationMm: 65 },
};

const RESULTS: Partial<Record<string, string[]>> = {
  'iso-527-2': ['modulus', 'strain-at-break', 'peak-stress'],
  'iso-178': ['modulus', 'peak-stress'],
  'iso-604': ['modulus', 'peak-stress'],
  'iso-8510-1': ['highest-peel', 'mean-peel'],
};

function times<T>(count: number, make: (n: number) => T): T[] {
  return Array.from({ length: count }, (_, n) => make(n));
}

function common<K extends Item['kind']>(chance: Chance, kind: K, n: number): Omit<ItemCommon<K, never>, 'details'> {
  return {
    kind,
    id: `${kind}-${n}`,
    tag: `${kind}-${n}`,
    name: kind,
    model: '',
    state: chance.often(95) ? 'in-service' : 'faulty',
    place: '',
    massKg: chance.one([0.5, 2, 8]),
    lengthMm: chance.one([40, 90, 150]),
    ratings: {},
    temperatureMinC: chance.often(30) ? 10 : -40,
    temperatureMaxC: chance.often(30) ? 40 : 150,
    utilities: chance.often(10) ? ['compressed-air'] : [],
    needsCalibration: false,
    calibrations: [],
    heldWindows: chance.often(6) ? [held(chance)] : [],
  };
}

function held(chance: Chance): TimeWindow {
  return chance.often(30)
    ? PERIOD
    : {
        startMs: PERIOD.startMs + chance.whole(0, 10) * MS_PER_DAY,
        endMs: PERIOD.startMs + chance.whole(11, 28) * MS_PER_DAY,
      };
}

function end(chance: Chance, gender: Coupling['gender']): Coupling {
  return { type: 'clevis', sizeMm: chance.often(88) ? 15 : 20, gender };
}

function ratings(chance: Chance): Ratings {
  const at = (rating: number) => [
    { temperatureC: 23, rating },
    { temperatureC: 120, rating: rating * chance.one([1, 0.5]) },
  ];
  return {
    ...(chance.often(95) ? { tension: at(chance.one(LOADS.slice(2))) } : {}),
    ...(chance.often(95) ? { compression: at(chance.one(LOADS.slice(2))) } : {}),
    ...(chance.often(60) ? { torque: at(chance.one(TORQUES)) } : {}),
  };
}

function frame(chance: Chance, n: number): Item {
  const capacity = chance.one(LOADS.slice(3));
  return {
    ...common(chance, 'frame', n),
    utilities: [],
    details: {
      tensionCapacityN: chance.often(95) ? capacity : 0,
      compressionCapacityN: chance.often(95) ? capacity : 0,
      torqueCapacityNm: chance.often(80) ? chance.one(TORQUES) : 0,
      openingMinMm: chance.one([50, 50, 250]),
      openingMaxMm: chance.one([600, 1000, 1400]),
      travelMm: chance.one([100, 800, 800]),
      columnClearanceMm: chance.one([180, 420, 420]),
      speedMinMmPerMin: chance.often(85) ? 0.001 : 2,
      speedMaxMmPerMin: chance.one([20, 600, 1000]),
      speedLimits: chance.often(30) ? [{ aboveForceN: capacity / 2, speedMaxMmPerMin: 100 }] : [],
      rotationMinDegPerMin: 1,
      rotationMaxDegPerMin: chance.one([10, 360, 360]),
      stiffnessNPerMm: chance.often(50) ? chance.one([2000, 40_000]) : null,
      crossheadCoupling: end(chance, 'male'),
      baseCoupling: end(chance, 'male'),
      cellPositions: chance.one([['crosshead'], ['base'], ['crosshead', 'base']]),
      channels: [
        { kind: 'force', count: 1 },
        { kind: 'torque', count: 1 },
        { kind: 'strain', count: chance.whole(0, 4) },
        { kind: 'temperature', count: chance.whole(0, 1) },
      ],
      utilitiesAtFrame: chance.often(85) ? ['compressed-air'] : [],
      guardEnergyJ: chance.one([0, 50, 2000]),
      guardInterlocked: chance.often(50),
      controlModes: chance.one([['position'], ['position', 'force']]),
    },
  };
}

/** Class and lower end of the verified range, mm. */
const EXTENSOMETERS = [
  { className: '0.2', from: 0 },
  { className: '0.5', from: 0.03 },
  { className: '1', from: 0 },
  { className: '1', from: 1 },
  { className: 'B-1', from: 0 },
  { className: 'D', from: 0 },
];

function calibration(chance: Chance, direction: Calibration['direction'], to: number): Calibration {
  const extension = direction === 'extension';
  const from = PERIOD.startMs - 100 * MS_PER_DAY;
  return {
    direction,
    standard: extension
      ? chance.one(['ISO 9513', 'ASTM E83'])
      : chance.one(['ISO 7500-1', 'ISO 7500-1', 'ISO 7500-1', 'ASTM E4']),
    ...(extension
      ? chance.one(EXTENSOMETERS)
      : {
          className: chance.one(['0.5', '0.5', '1', '1', '2', '1 %']),
          from: to / chance.one([20, 100, 400]),
        }),
    to,
    validFromMs: from,
    dueMs: chance.often(85) ? PERIOD.endMs + MS_PER_DAY : PERIOD.startMs + chance.one([-2, 5, 12]) * MS_PER_DAY,
  };
}

function cell(chance: Chance, n: number): Item {
  const torque = chance.often(20);
  const capacity = chance.one(torque ? TORQUES : LOADS.slice(1, 6));
  const directions: Calibration['direction'][] = torque
    ? ['torque']
    : chance.often(85)
      ? ['tension', 'compression']
      : ['tension'];
  return {
    ...common(chance, 'load-cell', n),
    needsCalibration: true,
    calibrations: directions
      .filter(() => chance.often(90))
      .map((direction) => calibration(chance, direction, capacity)),
    details: {
      capacityN: torque ? 0 : capacity,
      torqueCapacityNm: torque ? capacity : 0,
      directions: directions as ('tension' | 'compression' | 'torque')[],
      overloadPct: 150,
      frameCoupling: end(chance, 'female'),
      specimenCoupling: end(chance, 'male'),
    },
  };
}

function endDetails(chance: Chance): EndDetails {
  return {
    side: chance.one(['pair', 'pair', 'pair', 'upper', 'lower']),
    coupling: end(chance, 'female'),
    lowerMassKg: chance.often(30) ? 3 : null,
    lowerLengthMm: chance.often(30) ? 70 : null,
    outsideWidthMm: chance.one([80, 160, 300]),
  };
}

function grip(chance: Chance, n: number): Item {
  const slot = chance.often(50);
  return {
    ...common(chance, 'grip', n),
    ratings: ratings(chance),
    details: {
      ...endDetails(chance),
      action: 'wedge',
      acceptedEnds: chance.often(85) ? ['flat', 'round'] : ['round'],
      openingMinMm: chance.one([0, 0, 3]),
      openingMaxMm: chance.one([4, 12, 12]),
      faceWidthMm: chance.one([20, 40]),
      gripLengthMm: 40,
      faceSlot: slot ? 'S1' : null,
      fixedFaceShape: slot ? null : chance.one(['flat', 'vee']),
      fixedFaceSurface: slot ? null : chance.one(['serrated', 'rubber']),
    },
  };
}

function face(chance: Chance, n: number): Item {
  return {
    ...common(chance, 'jaw-face', n),
    lengthMm: 0,
    ratings: ratings(chance),
    details: {
      slot: chance.one(['S1', 'S1', 'S2']),
      shape: chance.one(['flat', 'vee']),
      surface: chance.one(['diamond', 'rubber']),
      widthMm: chance.one([15, 50]),
      openingMinMm: 0,
      openingMaxMm: chance.one([5, 15]),
    },
  };
}

function fixture(chance: Chance, n: number): Item {
  return {
    ...common(chance, 'fixture', n),
    ratings: ratings(chance),
    details: {
      ...endDetails(chance),
      purposes: chance.often(80) ? ['flexure-3', 'peel-90'] : ['peel-90'],
      spanMinMm: chance.one([20, 70]),
      spanMaxMm: chance.one([75, 300]),
      noseRadiusMm: 5,
      supportRadiusMm: 5,
      specimenWidthMaxMm: chance.one([15, 60]),
      specimenThicknessMaxMm: chance.one([3, 30]),
    },
  };
}

function platen(chance: Chance, n: number): Item {
  return {
    ...common(chance, 'platen', n),
    ratings: ratings(chance),
    details: { ...endDetails(chance), diameterMm: chance.one([12, 160, 200]), sphericalSeat: chance.often(60) },
  };
}

function adapter(chance: Chance, n: number): Item {
  return {
    ...common(chance, 'adapter', n),
    ratings: ratings(chance),
    details: { ends: [end(chance, 'female'), end(chance, 'male')] },
  };
}

function extensometer(chance: Chance, n: number): Item {
  return {
    ...common(chance, 'extensometer', n),
    needsCalibration: true,
    calibrations: chance.often(90) ? [calibration(chance, 'extension', chance.one([2, 30]))] : [],
    details: {
      gaugeLengthsMm: chance.one([[25], [50, 75], [75]]),
      travelPlusMm: chance.one([3, 50]),
      travelMinusMm: chance.one([1, 10]),
      measures: chance.one(['axial', 'axial', 'deflection']),
      contact: chance.often(60),
      channel: chance.one(['strain', 'video']),
      specimenMinMm: 0,
      specimenMaxMm: chance.one([5, 30]),
    },
  };
}

function chamber(chance: Chance, n: number): Item {
  return {
    ...common(chance, 'chamber', n),
    details: {
      minC: chance.one([-70, 20]),
      maxC: chance.one([100, 250]),
      insideWidthMm: chance.one([120, 300]),
      insideHeightMm: chance.one([150, 600]),
      fitsClearanceMinMm: chance.one([100, 300]),
      fitsClearanceMaxMm: chance.one([300, 600]),
      rampCPerMin: 3,
      soakBaseMin: 20,
      soakMinPerMm: 5,
    },
  };
}

function guard(chance: Chance, n: number): Item {
  const details = {
    energyJ: chance.one([30, 5000]),
    interlocked: true,
    fitsClearanceMinMm: 100,
    fitsClearanceMaxMm: chance.one([200, 600]),
  };
  return { ...common(chance, 'guard', n), details };
}

function thermocouple(chance: Chance, n: number): Item {
  return {
    ...common(chance, 'transducer', n),
    details: { measures: 'temperature', channel: 'temperature', rangeFrom: -50, rangeTo: 200 },
  };
}

function technician(chance: Chance, n: number): Lab['technicians'][number] {
  const startMs = PERIOD.startMs + chance.whole(0, 20) * MS_PER_DAY;
  return {
    id: `t-${n}`,
    methodIds: chance.often(80) ? [...METHOD_IDS] : chance.some(METHOD_IDS),
    windows: chance.often(90) ? [{ startMs, endMs: startMs + 5 * MS_PER_DAY }] : [],
  };
}
