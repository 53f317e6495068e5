import type { EndShape, FaceShape, FaceSurface, GripDetails, ItemCommon, Utility } from '#libs/matching/src/index.js';
import { bore, rated, ratedOver, ROOM, socket, UNCALIBRATED, units } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

type Size = 6 | 15 | 30 | 60;

interface GripLine {
  tag: string;
  name: string;
  model: string;
  count: number;
  /** Pin of its socket, mm: the family of frames that it belongs to. */
  pin: Size;
  ratingN: number;
  massKg: number;
  lengthMm: number;
  action: GripDetails['action'];
  ends: readonly EndShape[];
  opening: readonly [number, number];
  widthMm: number;
  gripLengthMm: number;
  outsideMm: number;
  /** Seat for separate faces, or the faces that are part of it. */
  faces: string | readonly [FaceShape, FaceSurface];
  needs?: readonly Utility[];
  /** Also in the chamber: coldest and hottest, °C. */
  chamber?: readonly [number, number];
  side?: 'upper' | 'pair';
}

const air: readonly Utility[] = ['compressed-air'];
const oil: readonly Utility[] = ['hydraulics'];
const flat: readonly EndShape[] = ['flat'];
const flatOrRound: readonly EndShape[] = ['flat', 'round'];
const cord: readonly EndShape[] = ['cord'];

/** One line a model; a pair counts as one item. Invented models with ordinary figures (common practice, no source). */
// prettier-ignore
const LINES: GripLine[] = [
  // 6 mm: threads, films, tapes, up to 200 N
  line('GA-FILM', 'Film clamps 50 N', 'Heddle F5', 3, 6, 50, 0.09, 48, 'screw', flat, [0, 3], 30, 15, 40, ['line', 'rubber']),
  line('GA-AIR02', 'Small air grips 200 N', 'Heddle A20', 2, 6, 200, 0.22, 62, 'pneumatic', flat, [0, 5], 30, 20, 55, ['flat', 'rubber'], { needs: air }),
  line('GA-YARN', 'Yarn bollards 200 N', 'Heddle Y20', 2, 6, 200, 0.18, 70, 'capstan', cord, [0.05, 1.5], 6, 40, 50, ['curved', 'smooth']),
  // 15 mm: up to 5 kN
  line('GB-AIR1', 'Air grips 1 kN', 'Heddle A100', 4, 15, 1000, 0.75, 92, 'pneumatic', flat, [0, 10], 50, 35, 80, 'A100', { needs: air }),
  line('GB-AIR2', 'Wide air grips 2 kN for fabric', 'Heddle A200', 2, 15, 2000, 1.6, 110, 'pneumatic', flat, [0, 12], 60, 40, 100, 'A200', { needs: air }),
  line('GB-AIR5', 'Wide air grips 5 kN', 'Heddle A500', 2, 15, 5000, 3.1, 130, 'pneumatic', flat, [0, 14], 60, 45, 120, 'A200', { needs: air }),
  line('GB-SCREW1', 'Screw grips 1 kN', 'Heddle S100', 3, 15, 1000, 0.6, 85, 'screw', flatOrRound, [0, 10], 30, 30, 70, 'S100', { chamber: [-70, 200] }),
  line('GB-SCREW5', 'Screw grips 5 kN', 'Heddle S500', 3, 15, 5000, 1.9, 105, 'screw', flatOrRound, [0, 16], 50, 40, 95, 'S500', { chamber: [-70, 250] }),
  line('GB-ROLL1', 'Roller grips 1 kN for rubber', 'Heddle R100', 2, 15, 1000, 0.7, 95, 'roller', flat, [0, 8], 30, 25, 90, ['curved', 'serrated']),
  line('GB-STRAP5', 'Strap rollers 5 kN', 'Heddle R500', 2, 15, 5000, 3.4, 120, 'roller', flat, [0.3, 6], 60, 60, 140, ['curved', 'smooth']),
  line('GB-CORD1', 'Cord bollards 1 kN', 'Heddle C100', 2, 15, 1000, 0.9, 120, 'capstan', cord, [0.5, 4], 10, 60, 90, ['curved', 'smooth']),
  line('GB-CORD5', 'Cord bollards 5 kN', 'Heddle C500', 1, 15, 5000, 2.8, 160, 'capstan', cord, [1.5, 10], 14, 90, 130, ['curved', 'smooth']),
  line('GB-WEDGE5', 'Wedge grips 5 kN', 'Heddle W5', 2, 15, 5000, 1.4, 90, 'wedge', flatOrRound, [0, 8], 25, 35, 75, 'W5'),
  line('GB-PIN5', 'Pin clevises 5 kN', 'Heddle P5', 1, 15, 5000, 0.8, 70, 'pin', ['pin-hole'], [1, 20], 30, 20, 60, ['curved', 'smooth']),
  // 30 mm: up to 50 kN
  line('GC-WEDGE10', 'Wedge grips 10 kN', 'Heddle W10', 3, 30, 10_000, 3.6, 120, 'wedge', flatOrRound, [0, 14], 30, 40, 95, 'W10'),
  line('GC-WEDGE30', 'Wedge grips 30 kN, also for the chamber', 'Heddle W30', 2, 30, 30_000, 7.5, 150, 'wedge', flatOrRound, [0, 18], 40, 50, 120, 'W30', { chamber: [-70, 250] }),
  line('GC-WEDGE50', 'Wedge grips 50 kN', 'Heddle W50', 2, 30, 50_000, 11, 170, 'wedge', flatOrRound, [0, 24], 50, 60, 145, 'W50'),
  line('GC-HYD50', 'Hydraulic grips 50 kN', 'Heddle H50', 1, 30, 50_000, 16, 190, 'hydraulic', flatOrRound, [0, 26], 60, 65, 170, 'H50', { needs: oil }),
  line('GC-AIR10', 'Air grips 10 kN', 'Heddle A1000', 2, 30, 10_000, 8.5, 165, 'pneumatic', flat, [0, 20], 60, 50, 150, 'A200', { needs: air }),
  line('GC-SCREW10', 'Screw grips 10 kN, also for the chamber', 'Heddle S1000', 2, 30, 10_000, 3.9, 130, 'screw', flatOrRound, [0, 22], 60, 50, 110, 'S1000', { chamber: [-70, 250] }),
  line('GC-THREAD30', 'Threaded holders 30 kN', 'Heddle T30', 2, 30, 30_000, 2.2, 80, 'threaded', ['threaded'], [4, 12], 20, 16, 60, ['curved', 'smooth']),
  line('GC-SHOULDER50', 'Split holders 50 kN for shouldered ends', 'Heddle B50', 1, 30, 50_000, 4, 100, 'shouldered', ['shouldered'], [6, 24], 30, 25, 80, ['curved', 'smooth']),
  line('GC-PIN50', 'Pin clevises 50 kN', 'Heddle P50', 2, 30, 50_000, 4.6, 110, 'pin', ['pin-hole'], [4, 40], 60, 35, 90, ['curved', 'smooth']),
  line('GC-STRAP20', 'Webbing bollards 20 kN', 'Heddle C2000', 1, 30, 20_000, 9, 190, 'capstan', flat, [1, 8], 60, 110, 170, ['curved', 'smooth']),
  // 60 mm: up to 250 kN
  line('GD-WEDGE100', 'Wedge grips 100 kN', 'Heddle W100', 2, 60, 100_000, 24, 230, 'wedge', flatOrRound, [0, 32], 65, 70, 190, 'W100'),
  line('GD-WEDGE250', 'Wedge grips 250 kN', 'Heddle W250', 1, 60, 250_000, 58, 310, 'wedge', flatOrRound, [0, 45], 90, 95, 260, 'W250'),
  line('GD-HYD250', 'Hydraulic grips 250 kN', 'Heddle H250', 1, 60, 250_000, 74, 340, 'hydraulic', flatOrRound, [0, 50], 100, 100, 300, 'W250', { needs: oil }),
  line('GD-THREAD100', 'Threaded holders 100 kN', 'Heddle T100', 2, 60, 100_000, 7, 120, 'threaded', ['threaded'], [8, 24], 40, 30, 100, ['curved', 'smooth']),
  line('GD-THREAD250', 'Threaded holders 250 kN', 'Heddle T250', 1, 60, 250_000, 16, 150, 'threaded', ['threaded'], [16, 39], 60, 45, 140, ['curved', 'smooth']),
  line('GD-PIN100', 'Pin clevises 100 kN', 'Heddle P100', 1, 60, 100_000, 11, 150, 'pin', ['pin-hole'], [8, 60], 80, 50, 130, ['curved', 'smooth']),
  // Single upper grips that work against a fixture below
  line('GB-PEEL1', 'Single air grip 1 kN for peel', 'Heddle A100', 2, 15, 1000, 0.75, 92, 'pneumatic', flat, [0, 10], 50, 35, 80, ['flat', 'rubber'], { needs: air, side: 'upper' }),
  line('GC-PEEL10', 'Single wedge grip 10 kN', 'Heddle W10', 1, 30, 10_000, 3.6, 120, 'wedge', flat, [0, 14], 30, 40, 95, ['flat', 'fine-serrated'], { side: 'upper' }),
];

export const GRIPS: DemoItem<'grip'>[] = [
  ...LINES.flatMap(pairs),
  ...chucks('GT-CHUCK200', 'Three-jaw chucks 200 N·m', 'Whorl C200', 2, 200, 'collet', ['round'], [2, 20]),
  ...chucks('GT-CHUCK20', 'Fine collet chucks 20 N·m', 'Whorl C20', 1, 20, 'collet', ['round'], [0.5, 6]),
  ...chucks('GT-HEX100', 'Hexagon drivers 100 N·m', 'Whorl X100', 2, 100, 'collet', ['hexagon', 'threaded'], [2.5, 17]),
];

function line(
  tag: string,
  name: string,
  model: string,
  count: number,
  pin: Size,
  ratingN: number,
  massKg: number,
  lengthMm: number,
  action: GripDetails['action'],
  ends: readonly EndShape[],
  opening: readonly [number, number],
  widthMm: number,
  gripLengthMm: number,
  outsideMm: number,
  faces: GripLine['faces'],
  rest: Pick<GripLine, 'needs' | 'chamber' | 'side'> = {},
): GripLine {
  return {
    tag,
    name,
    model,
    count,
    pin,
    ratingN,
    massKg,
    lengthMm,
    action,
    ends,
    opening,
    widthMm,
    gripLengthMm,
    outsideMm,
    faces,
    ...rest,
  };
}

function pairs(each: GripLine): DemoItem<'grip'>[] {
  return units(each.count, {
    ...shell(each.tag, each.name, each.model, each.massKg, each.lengthMm),
    ratings: each.chamber
      ? ratedOver(each.ratingN, each.chamber[0], each.chamber[1], 0.7, 'tension')
      : rated(each.ratingN, 'tension'),
    ...(each.chamber ? { temperatureMinC: each.chamber[0], temperatureMaxC: each.chamber[1] } : {}),
    utilities: each.needs ?? [],
    details: {
      ...jaws(each.action, each.ends, each.opening, each.widthMm, each.gripLengthMm, each.faces),
      side: each.side ?? 'pair',
      coupling: socket(each.pin),
      lowerMassKg: null,
      lowerLengthMm: null,
      outsideWidthMm: each.outsideMm,
    },
  });
}

function chucks(
  tag: string,
  name: string,
  model: string,
  count: number,
  ratingNm: number,
  action: GripDetails['action'],
  ends: readonly EndShape[],
  opening: readonly [number, number],
): DemoItem<'grip'>[] {
  return units(count, {
    ...shell(tag, name, model, 1.6, 75),
    place: 'Bay T, shelf',
    ratings: rated(ratingNm, 'torque'),
    details: {
      ...jaws(action, ends, opening, opening[1], 20, ['vee', 'serrated']),
      side: 'pair',
      coupling: bore(20),
      lowerMassKg: null,
      lowerLengthMm: null,
      outsideWidthMm: 90,
    },
  });
}

type Shell = Omit<
  ItemCommon<'grip', GripDetails>,
  'id' | 'state' | 'calibrations' | 'heldWindows' | 'ratings' | 'details'
>;

function shell(
  tag: string,
  name: string,
  model: string,
  massKg: number,
  lengthMm: number,
): Shell & { serialNumber: string; intervalMonths: null } {
  return {
    kind: 'grip',
    tag,
    name,
    model,
    serialNumber: `HD${model.slice(-4).replaceAll(' ', '')}-`,
    place: `Grip wall ${tag.slice(0, 2)}`,
    massKg,
    lengthMm,
    ...ROOM,
    ...UNCALIBRATED,
  };
}

function jaws(
  action: GripDetails['action'],
  acceptedEnds: readonly EndShape[],
  [openingMinMm, openingMaxMm]: readonly [number, number],
  faceWidthMm: number,
  gripLengthMm: number,
  faces: GripLine['faces'],
): Omit<GripDetails, 'side' | 'coupling' | 'lowerMassKg' | 'lowerLengthMm' | 'outsideWidthMm'> {
  const seat = typeof faces === 'string';
  return {
    action,
    acceptedEnds,
    openingMinMm,
    openingMaxMm,
    faceWidthMm,
    gripLengthMm,
    faceSlot: seat ? faces : null,
    fixedFaceShape: seat ? null : faces[0],
    fixedFaceSurface: seat ? null : faces[1],
  };
}
