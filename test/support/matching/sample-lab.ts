import { checkTrain, DEFAULT_SETTINGS, isNeeds, needsOf } from '#libs/matching/src/index.js';
import type {
  Ask,
  Item,
  ItemKind,
  Lab,
  Link,
  MatchSettings,
  Material,
  Method,
  Needs,
  RuleCode,
  TimeWindow,
  Verdict,
} from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';

export const DAY_MS = 86_400_000;
/** Ten days, in which nothing of the sample lab lapses. */
export const PERIOD: TimeWindow = { startMs: 1_800_000_000_000, endMs: 1_800_000_000_000 + 10 * DAY_MS };

const plain = (kind: ItemKind, id: string, massKg: number, lengthMm: number) => ({
  kind,
  id,
  tag: id,
  name: id,
  model: '',
  state: 'in-service',
  place: '',
  massKg,
  lengthMm,
  ratings: {},
  temperatureMinC: 10,
  temperatureMaxC: 40,
  utilities: [],
  needsCalibration: false,
  calibrations: [],
  heldWindows: [],
});

const inForce = { validFromMs: PERIOD.startMs - 100 * DAY_MS, dueMs: PERIOD.endMs + 100 * DAY_MS };
const rated = (rating: number) => ({
  tension: [{ temperatureC: 23, rating }],
  compression: [{ temperatureC: 23, rating }],
});

/** A frame of 10 kN with one sound train for ISO 527-2, on 20 mm clevises: cell C, adapters A1 and A2, grips G, faces J, extensometer X. */
export const SAMPLE_LAB: Lab = {
  items: [
    {
      ...plain('frame', 'F', 800, 0),
      details: {
        tensionCapacityN: 10_000,
        compressionCapacityN: 10_000,
        torqueCapacityNm: 0,
        openingMinMm: 100,
        openingMaxMm: 1000,
        travelMm: 900,
        columnClearanceMm: 400,
        speedMinMmPerMin: 0.01,
        speedMaxMmPerMin: 500,
        speedLimits: [],
        rotationMinDegPerMin: 0,
        rotationMaxDegPerMin: 0,
        stiffnessNPerMm: 40_000,
        crossheadCoupling: { type: 'flange', sizeMm: 60, gender: 'plain' },
        baseCoupling: { type: 'clevis', sizeMm: 20, gender: 'male' },
        cellPositions: ['crosshead'],
        channels: [
          { kind: 'force', count: 1 },
          { kind: 'strain', count: 1 },
          { kind: 'temperature', count: 1 },
        ],
        utilitiesAtFrame: ['compressed-air'],
        guardEnergyJ: 0,
        guardInterlocked: false,
        controlModes: ['position'],
      },
    },
    {
      ...plain('load-cell', 'C', 1.5, 70),
      needsCalibration: true,
      calibrations: ['tension', 'compression'].map((direction) => ({
        direction,
        standard: 'ISO 7500-1',
        className: '1',
        from: 50,
        to: 5000,
        ...inForce,
      })),
      details: {
        capacityN: 5000,
        torqueCapacityNm: 0,
        directions: ['tension', 'compression'],
        overloadPct: 150,
        frameCoupling: { type: 'flange', sizeMm: 60, gender: 'plain' },
        specimenCoupling: { type: 'clevis', sizeMm: 20, gender: 'male' },
      },
    },
    {
      ...plain('grip', 'G', 4, 120),
      ratings: rated(10_000),
      utilities: ['compressed-air'],
      details: {
        side: 'pair',
        coupling: { type: 'clevis', sizeMm: 15, gender: 'female' },
        lowerMassKg: null,
        lowerLengthMm: null,
        outsideWidthMm: 120,
        action: 'pneumatic',
        acceptedEnds: ['flat'],
        openingMinMm: 0,
        openingMaxMm: 12,
        faceWidthMm: 50,
        gripLengthMm: 40,
        faceSlot: 'S50',
        fixedFaceShape: null,
        fixedFaceSurface: null,
      },
    },
    {
      ...plain('jaw-face', 'J', 0.5, 0),
      ratings: rated(8000),
      details: { slot: 'S50', shape: 'flat', surface: 'diamond', widthMm: 25, openingMinMm: 1, openingMaxMm: 10 },
    },
    ...['A1', 'A2'].map((id) => ({
      ...plain('adapter', id, 0.8, 45),
      ratings: rated(12_000),
      details: {
        ends: [
          { type: 'clevis', sizeMm: 20, gender: 'female' },
          { type: 'clevis', sizeMm: 15, gender: 'male' },
        ],
      },
    })),
    {
      ...plain('extensometer', 'X', 0.2, 0),
      needsCalibration: true,
      calibrations: [{ direction: 'extension', standard: 'ISO 9513', className: '1', from: 0, to: 10, ...inForce }],
      details: {
        gaugeLengthsMm: [50, 75],
        travelPlusMm: 10,
        travelMinusMm: 2,
        measures: 'axial',
        contact: true,
        channel: 'strain',
        specimenMinMm: 0.5,
        specimenMaxMm: 12,
      },
    },
  ] as unknown as Item[],
  rigs: [{ frameId: 'F', itemIds: ['C'], chamberC: null }],
  technicians: [{ id: 'T', methodIds: METHODS.map(({ id }) => id), windows: [PERIOD] }],
};

export const SAMPLE_LINKS: readonly Pick<Link, 'role' | 'itemId'>[] = [
  { role: 'load-cell', itemId: 'C' },
  { role: 'upper-adapter', itemId: 'A1' },
  { role: 'ends', itemId: 'G' },
  { role: 'faces', itemId: 'J' },
  { role: 'lower-adapter', itemId: 'A2' },
  { role: 'extensometer', itemId: 'X' },
];

/** Moulded dumb-bells, 1000 to 2000 N, with modulus, at room temperature. */
export const SAMPLE_ASK: Ask = {
  methodId: 'iso-527-2',
  methodVersion: 1,
  materialId: null,
  strength: null,
  peak: { low: 1000, high: 2000 },
  modulusMPa: { low: 3000, high: 4000 },
  geometry: {
    shape: 'rectangle',
    widthMm: 10,
    thicknessMm: 4,
    parallelLengthMm: 80,
    gripSeparationMm: 115,
    endWidthMm: 20,
  },
  endShape: 'flat',
  specimens: 5,
  temperatureC: null,
  results: ['modulus', 'peak-stress'],
  speedMmPerMin: 50,
  travelMm: 5,
  options: { contactExtensometer: true, crossheadStrain: false, lowerForceClass: false },
  hazards: [],
  confirmed: [],
};

/** @throws {Error} when no method of the library has that id */
export function methodNamed(id: string): Method {
  const method = METHODS.find((each) => each.id === id);
  if (!method) throw new Error(`No method ${id}.`);
  return method;
}

/** @throws {Error} naming what is wrong with the ask */
export function needsFor(
  change: Partial<Ask> = {},
  method = methodNamed(change.methodId ?? SAMPLE_ASK.methodId),
  material: Material | null = null,
): Needs {
  const needs = needsOf({ ...SAMPLE_ASK, ...change }, method, material);
  if (!isNeeds(needs)) throw new Error(needs.map(({ sentence }) => sentence).join(' '));
  return needs;
}

/** The sample lab with one item's fields or details otherwise. */
export function labWith(
  id: string,
  change: Partial<Omit<Item, 'details' | 'kind'>>,
  details: Record<string, unknown> = {},
  lab: Lab = SAMPLE_LAB,
): Lab {
  const items = lab.items.map((item) =>
    item.id === id ? ({ ...item, ...change, details: { ...item.details, ...details } } as Item) : item,
  );
  return { ...lab, items };
}

/** The sample lab with more items. */
export function labPlus(...items: Item[]): Lab {
  return { ...SAMPLE_LAB, items: [...SAMPLE_LAB.items, ...items] };
}

export interface Trial {
  lab?: Lab;
  needs?: Needs;
  links?: readonly Pick<Link, 'role' | 'itemId'>[];
  settings?: Partial<MatchSettings>;
  period?: TimeWindow;
}

/** What one rule says about the sample train. */
export function verdictOn(
  rule: RuleCode,
  { lab = SAMPLE_LAB, needs = needsFor(), links = SAMPLE_LINKS, settings, period = PERIOD }: Trial = {},
): Verdict {
  const check = checkTrain(lab, { frameId: 'F', links }, needs, period, { ...DEFAULT_SETTINGS, ...settings });
  return check!.verdicts.find((verdict) => verdict.rule === rule)!;
}

/** Its outcome alone. */
export function outcomeOf(rule: RuleCode, trial: Trial = {}): Verdict['outcome'] {
  return verdictOn(rule, trial).outcome;
}

export function sampleItem<K extends ItemKind>(kind: K, id: string): Extract<Item, { kind: K }> {
  return SAMPLE_LAB.items.find((item) => item.id === id && item.kind === kind) as Extract<Item, { kind: K }>;
}
