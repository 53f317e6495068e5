import { counterpart } from '../register/couplings.js';
import type {
  Adapter,
  Calibration,
  CellPosition,
  Chamber,
  Coupling,
  EndDetails,
  Extensometer,
  Fixture,
  Frame,
  Grip,
  Guard,
  Item,
  LoadCell,
  Platen,
} from '../register/item.js';
import type { Needs } from '../ask/needs.js';
import type { EndItem } from '../rules/parts.js';
import type { Question } from './proposal.js';

/*
 * Things that the lab does not have, with the figures that a test needs and ordinary ones elsewhere (common practice, no source).
 * They serve to try an advice out and say what to look for; they are not an offer.
 */

type Bare = Omit<Item, 'kind' | 'details' | 'id' | 'tag' | 'name'>;

const SLACK = 1.2;

function bare(needs: Needs, massKg: number, lengthMm: number): Bare {
  return {
    model: '',
    state: 'in-service',
    place: '',
    massKg,
    lengthMm,
    ratings: {},
    temperatureMinC: Math.min(10, needs.temperature.value),
    temperatureMaxC: Math.max(35, needs.temperature.value),
    utilities: [],
    needsCalibration: false,
    calibrations: [],
    heldWindows: [],
  };
}

function named(name: string): { id: string; tag: string; name: string } {
  return { id: `new-${name}`, tag: `new-${name}`, name };
}

function rated(needs: Needs, rating: number): Pick<Bare, 'ratings'> {
  return { ratings: { [needs.direction]: [{ temperatureC: needs.temperature.value, rating }] } };
}

export function newAdapter(a: Coupling, b: Coupling, rating: number, needs: Needs): Adapter {
  return {
    kind: 'adapter',
    ...named('adapter'),
    ...bare(needs, 1, 60),
    ...rated(needs, rating),
    details: { ends: [a, b] },
  };
}

export function newCell(
  frame: Frame,
  cellAt: CellPosition,
  endCoupling: Coupling,
  capacity: number,
  { needs, period }: Question,
): LoadCell {
  const torque = needs.direction === 'torque';
  const calibration: Calibration = {
    direction: needs.direction,
    standard: needs.forceClass.standard,
    className: needs.forceClass.className,
    from: needs.smallest.value,
    to: capacity,
    validFromMs: period.startMs,
    dueMs: period.endMs,
  };
  const seat = cellAt === 'crosshead' ? frame.details.crossheadCoupling : frame.details.baseCoupling;
  return {
    kind: 'load-cell',
    ...named('load-cell'),
    ...bare(needs, 1, 80),
    needsCalibration: true,
    calibrations: [calibration],
    details: {
      capacityN: torque ? 0 : capacity,
      torqueCapacityNm: torque ? capacity : 0,
      directions: [needs.direction],
      overloadPct: 150,
      frameCoupling: counterpart(seat),
      specimenCoupling: counterpart(endCoupling),
    },
  };
}

export function newExtensometer({ needs, period }: Question): Extensometer {
  const { rule, gaugeLength, extension, contactAllowed } = needs.strain;
  const travelMm = SLACK * (extension?.value ?? 1);
  const calibration: Calibration = {
    direction: 'extension',
    standard: rule!.standard,
    className: rule!.className,
    from: 0,
    to: travelMm,
    validFromMs: period.startMs,
    dueMs: period.endMs,
  };
  return {
    kind: 'extensometer',
    ...named('extensometer'),
    ...bare(needs, 0.2, 0),
    needsCalibration: true,
    calibrations: [calibration],
    details: {
      gaugeLengthsMm: [gaugeLength?.value ?? 1],
      travelPlusMm: travelMm,
      travelMinusMm: travelMm,
      measures: rule!.measures,
      contact: contactAllowed,
      channel: contactAllowed ? 'strain' : 'video',
      specimenMinMm: 0,
      specimenMaxMm: SLACK * needs.specimen.bodyThicknessMm,
    },
  };
}

export function newChamber(frame: Frame, needs: Needs): Chamber {
  const { columnClearanceMm } = frame.details;
  return {
    kind: 'chamber',
    ...named('chamber'),
    ...bare(needs, 60, 0),
    details: {
      minC: Math.min(needs.temperature.value, 20),
      maxC: Math.max(needs.temperature.value, 30),
      insideWidthMm: columnClearanceMm,
      insideHeightMm: SLACK * (needs.specimen.freeLengthMm + needs.travel.value),
      fitsClearanceMinMm: columnClearanceMm,
      fitsClearanceMaxMm: columnClearanceMm,
      rampCPerMin: 3,
      soakBaseMin: 30,
      soakMinPerMm: 5,
    },
  };
}

export function newGuard(frame: Frame, energyJ: number): Guard {
  const { columnClearanceMm } = frame.details;
  const details = {
    energyJ,
    interlocked: true,
    fitsClearanceMinMm: columnClearanceMm,
    fitsClearanceMaxMm: columnClearanceMm,
  };
  const plain = {
    model: '',
    state: 'in-service' as const,
    place: '',
    massKg: 20,
    lengthMm: 0,
    ratings: {},
    temperatureMinC: -100,
    temperatureMaxC: 300,
  };
  return {
    kind: 'guard',
    ...named('guard'),
    ...plain,
    utilities: [],
    needsCalibration: false,
    calibrations: [],
    heldWindows: [],
    details,
  };
}

/** A pair of ends for the specimen: like one that the lab has, opened to what is needed, or new on the frame's own couplings. */
export function newEnd(frame: Frame, like: Item | null, needs: Needs, rating: number): EndItem {
  const common = {
    ...bare(needs, 2, 80),
    ...rated(needs, rating),
    ...(like ? { massKg: like.massKg, lengthMm: like.lengthMm } : {}),
  };
  const side = like && 'side' in like.details ? like.details.side : 'pair';
  const coupling = like && 'coupling' in like.details ? like.details.coupling : counterpart(frame.details.baseCoupling);
  const body = {
    side,
    coupling,
    lowerMassKg: null,
    lowerLengthMm: null,
    outsideWidthMm: Math.min(120, frame.details.columnClearanceMm),
  };
  const { specimen, ends } = needs;
  if (ends.by === 'platens') {
    const across = Math.hypot(specimen.bodyThicknessMm, specimen.bodyWidthMm);
    const platen: Platen = {
      kind: 'platen',
      ...named('platens'),
      ...common,
      details: { ...body, diameterMm: SLACK * across, sphericalSeat: true },
    };
    return platen;
  }
  if (ends.by === 'fixture' && !(like && like.kind === 'grip')) return newFixture(common, body, needs, ends.purpose);
  const grip: Grip = {
    kind: 'grip',
    ...named('grips'),
    ...common,
    details: {
      ...body,
      action: 'wedge',
      acceptedEnds: [specimen.endShape],
      openingMinMm: 0,
      openingMaxMm: SLACK * specimen.gripThicknessMm,
      faceWidthMm: SLACK * specimen.gripWidthMm,
      gripLengthMm: 40,
      faceSlot: null,
      fixedFaceShape: specimen.endShape === 'round' ? 'vee' : 'flat',
      fixedFaceSurface: ends.by === 'grips' ? (ends.surfaces[0] ?? 'serrated') : 'serrated',
    },
  };
  return grip;
}

function newFixture(
  common: Bare,
  body: EndDetails,
  { specimen }: Needs,
  purpose: Fixture['details']['purposes'][number],
): Fixture {
  return {
    kind: 'fixture',
    ...named('fixture'),
    ...common,
    details: {
      ...body,
      purposes: [purpose],
      spanMinMm: specimen.spanMm,
      spanMaxMm: specimen.spanMm,
      noseRadiusMm: null,
      supportRadiusMm: null,
      specimenWidthMaxMm: SLACK * specimen.bodyWidthMm,
      specimenThicknessMaxMm: SLACK * specimen.bodyThicknessMm,
    },
  };
}
