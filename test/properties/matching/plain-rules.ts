import type {
  Adapter,
  Coupling,
  Item,
  Lab,
  MatchSettings,
  Needs,
  RuleCode,
  TimeWindow,
} from '#libs/matching/src/index.js';

/*
 * The rules of matching once more, written apart from libs/matching and as plainly as possible: it takes one train of units and says
 * which rules it breaks. Nothing here is shared with the product but the types.
 */

type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;
export type PlainEnd = Of<'grip'> | Of<'fixture'> | Of<'platen'>;

export interface PlainTrain {
  frame: Of<'frame'>;
  cell: Of<'load-cell'>;
  cellAt: 'crosshead' | 'base';
  upperAdapters: Adapter[];
  lowerAdapters: Adapter[];
  upper: PlainEnd;
  lower: PlainEnd;
  faces: Of<'jaw-face'> | null;
  extensometer: Of<'extensometer'> | null;
  chamber: Of<'chamber'> | null;
  guard: Of<'guard'> | null;
  thermocouple: Of<'transducer'> | null;
}

const G = 9.80665;
const NEAR = 1e-9;
const le = (a: number, b: number) => a <= b + NEAR * Math.abs(b) + 1e-12;

/** Every rule that a train breaks, each once. */
export function brokenRules(
  train: PlainTrain,
  needs: Needs,
  lab: Lab,
  settings: MatchSettings,
  period: TimeWindow,
): RuleCode[] {
  const broken = new Set<RuleCode>();
  const must = (rule: RuleCode, holds: boolean) => holds || broken.add(rule);
  const { frame, cell, upper, lower, faces, extensometer, chamber, guard, thermocouple } = train;
  const torque = needs.direction === 'torque';
  const peak = needs.peakHigh.value;
  const withMargin = peak * (1 + settings.forceMargin);
  const frameCapacity = torque
    ? frame.details.torqueCapacityNm
    : needs.direction === 'tension'
      ? frame.details.tensionCapacityN
      : frame.details.compressionCapacityN;
  const cellCapacity = torque ? cell.details.torqueCapacityNm : cell.details.capacityN;
  const canLoad = frameCapacity > 0;
  const ends: PlainEnd[] = upper.id === lower.id ? [upper] : [upper, lower];
  const adapters = [...train.upperAdapters, ...train.lowerAdapters];
  const links: Item[] = [...ends, ...(faces ? [faces] : []), ...adapters];
  const all: Item[] = [
    frame,
    cell,
    ...links,
    ...[extensometer, chamber, guard, thermocouple].filter((item) => item !== null),
  ];

  must('frame-capacity', le(withMargin, frameCapacity));
  must('cell-within-frame', !canLoad || le(cellCapacity, frameCapacity));

  const lowerMass = upper.id === lower.id ? (lower.details.lowerMassKg ?? lower.massKg) : lower.massKg;
  const hanging =
    (train.cellAt === 'crosshead'
      ? sum(train.upperAdapters.map((a) => a.massKg)) + upper.massKg
      : sum(train.lowerAdapters.map((a) => a.massKg)) + lowerMass) + (faces?.massKg ?? 0);
  const weight = G * hanging;
  const pullsOnCell = needs.direction === 'tension' ? train.cellAt === 'crosshead' : train.cellAt === 'base';
  const onCell = torque ? withMargin : pullsOnCell ? withMargin + weight : Math.max(withMargin - weight, weight);
  must(
    'cell-capacity',
    cell.details.directions.includes(needs.direction) && le(withMargin, cellCapacity) && le(onCell, cellCapacity),
  );

  for (const link of links) must('weakest-link', le(withMargin, plainRating(link, needs)));

  const live = cell.calibrations.filter((c) => c.validFromMs < period.endMs && c.dueMs > period.startMs);
  const counting = live.length > 0 ? live : cell.calibrations;
  must(
    'verified-range',
    counting.some(
      (c) =>
        c.direction === needs.direction &&
        plainClass(c, needs.forceClass) &&
        le(c.from, needs.smallest.value) &&
        le(peak, c.to),
    ),
  );

  for (const item of all) {
    if (item.needsCalibration)
      must(
        'calibration-in-force',
        item.calibrations.some((c) => c.dueMs > period.startMs),
      );
    must('frame-state', item.state === 'in-service' && !coveredBy(item.heldWindows, period));
  }
  const usable = all.map((item) => plainUsable(item, needs, period));
  const staff = lab.technicians
    .filter((t) => t.methodIds.includes(needs.methodId))
    .flatMap((t) => t.windows.map((w) => clip(w, period)));
  const staffed = staff.filter((w) => w.startMs < w.endMs);
  if (usable.every((windows) => windows.length > 0)) {
    const others = staffed.length > 0 ? [...usable, staffed] : usable;
    must('calibration-in-force', others.reduce((a, b) => intersect(a, b)).length > 0);
  }
  must('qualification', staffed.length > 0);

  const seat = train.cellAt === 'crosshead' ? frame.details.crossheadCoupling : frame.details.baseCoupling;
  must('couplings', frame.details.cellPositions.includes(train.cellAt) && fit(seat, cell.details.frameCoupling));
  const top = train.cellAt === 'crosshead' ? cell.details.specimenCoupling : frame.details.crossheadCoupling;
  const bottom = train.cellAt === 'crosshead' ? frame.details.baseCoupling : cell.details.specimenCoupling;
  must(
    'couplings',
    chain(top, train.upperAdapters, upper.details.coupling) &&
      chain(bottom, train.lowerAdapters, lower.details.coupling),
  );

  const lowerLength = upper.id === lower.id ? (lower.details.lowerLengthMm ?? lower.lengthMm) : lower.lengthMm;
  const stack = cell.lengthMm + sum(adapters.map((a) => a.lengthMm)) + upper.lengthMm + lowerLength;
  const start = stack + needs.specimen.freeLengthMm;
  const travel = needs.travel.value;
  const least = needs.direction === 'compression' ? start - travel : start;
  const most = needs.direction === 'tension' ? start + travel : start;
  must(
    'test-space',
    le(most + settings.clearanceMm, frame.details.openingMaxMm) && le(frame.details.openingMinMm, least),
  );
  if (needs.ends.by !== 'fixture') must('test-space', le(stack, least));
  const width = Math.max(...ends.map((end) => end.details.outsideWidthMm), needs.specimen.bodyWidthMm);
  must('test-space', le(width, frame.details.columnClearanceMm));

  if (canLoad) {
    if (!torque) must('travel', le(travel, frame.details.travelMm));
    const limits = frame.details.speedLimits
      .filter((limit) => peak > limit.aboveForceN)
      .map((limit) => limit.speedMaxMmPerMin);
    const [slowest, fastest] = torque
      ? [frame.details.rotationMinDegPerMin, frame.details.rotationMaxDegPerMin]
      : [frame.details.speedMinMmPerMin, Math.min(frame.details.speedMaxMmPerMin, ...limits)];
    for (const { speed } of needs.speeds) must('speed', le(slowest, speed.value) && le(speed.value, fastest));
    must('channels', channelCount(frame, torque ? 'torque' : 'force') >= 1);
  }

  for (const end of ends) {
    must('specimen-fit', holds(end, faces, needs));
    if (end.kind === 'grip') must('specimen-fit', end.details.faceSlot === (faces?.details.slot ?? null));
  }
  if (needs.ends.by === 'platens' && needs.ends.sphericalSeat === 'required') {
    must(
      'specimen-fit',
      ends.some((end) => end.kind === 'platen' && end.details.sphericalSeat),
    );
  }

  const warm = needs.temperature.value;
  const inside = [...links, ...(extensometer ? [extensometer] : [])];
  for (const item of inside) must('temperature', le(item.temperatureMinC, warm) && le(warm, item.temperatureMaxC));
  if (needs.chamber) must('temperature', chamber !== null);
  if (chamber) {
    const c = chamber.details;
    const clearance = frame.details.columnClearanceMm;
    must(
      'temperature',
      le(c.minC, warm) &&
        le(warm, c.maxC) &&
        le(c.fitsClearanceMinMm, clearance) &&
        le(clearance, c.fitsClearanceMaxMm),
    );
    const tall = needs.specimen.freeLengthMm + (needs.direction === 'tension' ? travel : 0);
    must(
      'temperature',
      le(Math.max(upper.details.outsideWidthMm, lower.details.outsideWidthMm), c.insideWidthMm) &&
        le(tall, c.insideHeightMm),
    );
  }

  must('strain', strainHolds(extensometer, needs, period));
  if (extensometer)
    must(
      'channels',
      channelCount(frame, extensometer.details.channel) >=
        (extensometer.details.channel === (torque ? 'torque' : 'force') ? 2 : 1),
    );
  if (thermocouple) must('channels', channelCount(frame, thermocouple.details.channel) >= 1);

  const supplied = (item: Item | null) =>
    !item || item.utilities.every((u) => frame.details.utilitiesAtFrame.includes(u));
  for (const item of [...ends, faces, chamber, extensometer]) must('utilities', supplied(item));

  must('guarding', guarded(train, needs, settings));
  return [...broken];
}

function guarded({ frame, guard }: PlainTrain, needs: Needs, settings: MatchSettings): boolean {
  const { stiffnessNPerMm: measured, tensionCapacityN, compressionCapacityN } = frame.details;
  const capacity = needs.direction === 'tension' ? tensionCapacityN : compressionCapacityN;
  const k = measured === null ? Math.min(settings.assumedStiffnessNPerMm, capacity / 3) : measured / 2;
  const energy =
    needs.direction === 'torque'
      ? 0
      : needs.storedEnergy.value + (needs.peakHigh.value * needs.peakHigh.value) / (2 * k * 1000);
  const from = needs.hazards.includes('fragments')
    ? Math.min(settings.guardFragmentsFromJ, settings.guardFromJ)
    : settings.guardFromJ;
  if (!needs.guardAlways && energy < from) return true;
  const own = frame.details.guardEnergyJ;
  if (guard && guard.details.energyJ > own) {
    const clearance = frame.details.columnClearanceMm;
    return (
      le(energy, guard.details.energyJ) &&
      le(guard.details.fitsClearanceMinMm, clearance) &&
      le(clearance, guard.details.fitsClearanceMaxMm)
    );
  }
  return (own > 0 || guard !== null) && le(energy, own);
}

/** Whether one end takes the specimen, with these faces where it has a seat. */
export function holds(end: PlainEnd, faces: Of<'jaw-face'> | null, needs: Needs): boolean {
  const s = needs.specimen;
  if (end.kind === 'platen') {
    const round = s.bodyThicknessMm === s.bodyWidthMm && s.endShape === 'round';
    return le(round ? s.bodyWidthMm : Math.sqrt(s.bodyThicknessMm ** 2 + s.bodyWidthMm ** 2), end.details.diameterMm);
  }
  if (end.kind === 'fixture') {
    const d = end.details;
    const span =
      s.spanMm === null || d.spanMaxMm === null || (le(d.spanMinMm ?? 0, s.spanMm) && le(s.spanMm, d.spanMaxMm));
    return span && le(s.bodyWidthMm, d.specimenWidthMaxMm) && le(s.bodyThicknessMm, d.specimenThicknessMaxMm);
  }
  const d = end.details;
  const f = faces && faces.details.slot === d.faceSlot ? faces.details : null;
  const opens = le(d.openingMinMm, s.gripThicknessMm) && le(s.gripThicknessMm, d.openingMaxMm);
  const faceOpens = !f || (le(f.openingMinMm, s.gripThicknessMm) && le(s.gripThicknessMm, f.openingMaxMm));
  return (
    d.acceptedEnds.includes(s.endShape) &&
    opens &&
    faceOpens &&
    le(s.gripWidthMm, d.faceWidthMm) &&
    (!f || le(s.gripWidthMm, f.widthMm))
  );
}

function strainHolds(extensometer: Of<'extensometer'> | null, needs: Needs, period: TimeWindow): boolean {
  const need = needs.strain;
  if (need.how !== 'extensometer') return true;
  if (!extensometer) return !need.demanded;
  const d = extensometer.details;
  if (d.measures !== need.rule!.measures || (d.contact && !need.contactAllowed)) return false;
  const gauge = need.gaugeLength?.value;
  if (gauge !== undefined && !d.gaugeLengthsMm.some((each) => Math.abs(each - gauge) <= 0.01 * gauge)) return false;
  const extension = need.extension?.value ?? 0;
  const reach = needs.direction === 'compression' && d.measures === 'axial' ? d.travelMinusMm : d.travelPlusMm;
  if (
    !le(extension, reach) ||
    !le(d.specimenMinMm, needs.specimen.bodyThicknessMm) ||
    !le(needs.specimen.bodyThicknessMm, d.specimenMaxMm)
  )
    return false;
  const live = extensometer.calibrations.filter((c) => c.validFromMs < period.endMs && c.dueMs > period.startMs);
  const counting = live.length > 0 ? live : extensometer.calibrations;
  return counting.some((c) => spansExtension(c, needs));
}

/** A certificate of extension in a class that is good enough, over all that is read. */
function spansExtension(c: Item['calibrations'][number], { strain }: Needs): boolean {
  const largest = strain.extension?.value ?? 0;
  const smallest = strain.smallestExtension?.value ?? largest;
  if (c.direction !== 'extension' || !le(c.from, smallest) || !le(largest, c.to)) return false;
  return plainClass(c, strain.rule!) || isoMeetsE83(c, strain.rule!, strain.strainLengthMm!, smallest, largest);
}

/** ISO 9513:2012 table 2 (from memory): gauge length %, bias % and mm, resolution % and mm. */
const ISO_9513: Record<string, readonly [number, number, number, number, number]> = {
  '0.2': [0.2, 0.2, 0.0006, 0.1, 0.0002],
  '0.5': [0.5, 0.5, 0.0015, 0.25, 0.0005],
  '1': [1, 1, 0.003, 0.5, 0.001],
  '2': [2, 2, 0.006, 1, 0.002],
};

/** ASTM E83 table 1 (from memory): gauge length %, bias % and strain; the resolution is half of the bias. */
const ASTM_E83: Record<string, readonly [number, number, number]> = {
  A: [0.1, 0.1, 0.00002],
  'B-1': [0.25, 0.5, 0.0001],
  'B-2': [0.5, 0.5, 0.0002],
  C: [1, 1, 0.001],
  D: [1, 1, 0.01],
  E: [1, 1, 0.1],
};

type ClassOf = Record<'standard' | 'className', string>;

/** Compared at a thousand extensions of those that are read. */
function isoMeetsE83(held: ClassOf, need: ClassOf, lengthMm: number, smallestMm: number, largestMm: number): boolean {
  const iso = held.standard === 'ISO 9513' ? ISO_9513[held.className] : undefined;
  const e83 = need.standard === 'ASTM E83' ? ASTM_E83[need.className] : undefined;
  if (!iso || !e83 || iso[0] > e83[0]) return false;
  for (let step = 0; step <= 1000; step += 1) {
    const mm = smallestMm + ((largestMm - smallestMm) * step) / 1000;
    const allowed = Math.max((e83[1] / 100) * mm, e83[2] * lengthMm);
    if (!le(Math.max((iso[1] / 100) * mm, iso[2]), allowed)) return false;
    if (!le(Math.max((iso[3] / 100) * mm, iso[4]), allowed / 2)) return false;
  }
  return true;
}

const ORDER: Record<string, string[]> = {
  'ISO 7500-1': ['0.5', '1', '2', '3'],
  'ASTM E4': ['1 %'],
  'ISO 9513': ['0.2', '0.5', '1', '2'],
  'ASTM E83': ['A', 'B-1', 'B-2', 'C', 'D', 'E'],
};

/** Same standard and as good, or ISO 7500-1 class 1 and better where ASTM E4 is asked for. */
function plainClass(
  held: { standard: string; className: string },
  need: { standard: string; className: string },
): boolean {
  const rank = (of: { standard: string; className: string }) => (ORDER[of.standard] ?? []).indexOf(of.className);
  if (rank(held) < 0 || rank(need) < 0) return false;
  if (held.standard === need.standard) return rank(held) <= rank(need);
  if (held.standard === 'ISO 7500-1' && need.standard === 'ASTM E4') return rank(held) <= 1;
  return false;
}

/** What an item carries in the direction and at the temperature of the test. */
export function plainRating(item: Item, needs: Needs): number {
  const points = [...(item.ratings[needs.direction] ?? [])].sort((a, b) => a.temperatureC - b.temperatureC);
  const at = needs.temperature.value;
  if (points.length === 0) return 0;
  if (at <= points[0]!.temperatureC) return points[0]!.rating;
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [points[i - 1]!, points[i]!];
    if (at <= b.temperatureC)
      return a.rating + ((b.rating - a.rating) * (at - a.temperatureC)) / (b.temperatureC - a.temperatureC);
  }
  return at > points.at(-1)!.temperatureC + 50 ? 0 : points.at(-1)!.rating;
}

/** When a unit may be used, with its calibration good for the test. */
export function plainUsable(item: Item, needs: Needs, period: TimeWindow): TimeWindow[] {
  if (item.state !== 'in-service') return [];
  let windows = [period];
  if (item.needsCalibration) {
    const good = item.calibrations.filter((c) => {
      if (item.kind === 'load-cell')
        return (
          c.direction === needs.direction &&
          plainClass(c, needs.forceClass) &&
          le(c.from, needs.smallest.value) &&
          le(needs.peakHigh.value, c.to)
        );
      if (item.kind === 'extensometer' && needs.strain.rule) return spansExtension(c, needs);
      return true;
    });
    windows = good
      .map((c) => clip({ startMs: c.validFromMs, endMs: c.dueMs }, period))
      .filter((w) => w.startMs < w.endMs);
  }
  for (const held of item.heldWindows) windows = windows.flatMap((w) => without(w, held));
  return windows;
}

function without(window: TimeWindow, held: TimeWindow): TimeWindow[] {
  return [
    { startMs: window.startMs, endMs: Math.min(window.endMs, held.startMs) },
    { startMs: Math.max(window.startMs, held.endMs), endMs: window.endMs },
  ].filter((w) => w.startMs < w.endMs);
}

function clip(window: TimeWindow, period: TimeWindow): TimeWindow {
  return { startMs: Math.max(window.startMs, period.startMs), endMs: Math.min(window.endMs, period.endMs) };
}

function intersect(a: TimeWindow[], b: TimeWindow[]): TimeWindow[] {
  return a.flatMap((x) => b.map((y) => clip(x, y))).filter((w) => w.startMs < w.endMs);
}

function coveredBy(held: readonly TimeWindow[], period: TimeWindow): boolean {
  return held.reduce((left, each) => left.flatMap((w) => without(w, each)), [period]).length === 0;
}

function fit(a: Coupling, b: Coupling): boolean {
  const genders =
    a.gender === 'plain'
      ? b.gender === 'plain'
      : (a.gender === 'male' && b.gender === 'female') || (a.gender === 'female' && b.gender === 'male');
  return a.type === b.type && a.sizeMm === b.sizeMm && genders;
}

function chain(from: Coupling, adapters: readonly Adapter[], to: Coupling): boolean {
  if (adapters.length > 2) return false;
  if (adapters.length === 0) return fit(from, to);
  const [first, ...rest] = adapters;
  const [a, b] = first!.details.ends;
  return (fit(from, a) && chain(b, rest, to)) || (fit(from, b) && chain(a, rest, to));
}

function channelCount(frame: Of<'frame'>, kind: string): number {
  return sum(frame.details.channels.filter((channel) => channel.kind === kind).map((channel) => channel.count));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, each) => total + each, 0);
}
