import type {
  CellPosition,
  Adapter,
  Chamber,
  Extensometer,
  Fixture,
  Frame,
  Grip,
  Guard,
  JawFace,
  LoadCell,
  Platen,
  Transducer,
} from '../register/item.js';

export type EndItem = Grip | Fixture | Platen;

/** What holds the specimen. A pair is the same item above and below. */
export interface Ends {
  upper: EndItem;
  lower: EndItem;
}

/** Adapters of each side, in order from frame or cell to the specimen. */
export interface Adapters {
  upper: readonly Adapter[];
  lower: readonly Adapter[];
}

/** A whole load train as items. What is null is not fitted. */
export interface Parts {
  frame: Frame;
  cell: LoadCell;
  cellAt: CellPosition;
  adapters: Adapters;
  ends: Ends;
  /** Separate faces, the same on both sides; null where the ends bring their own. */
  faces: JawFace | null;
  extensometer: Extensometer | null;
  chamber: Chamber | null;
  guard: Guard | null;
  thermocouple: Transducer | null;
}

/** An empty train, filled part by part. Only checks that look at the filled parts may be run on it. */
export function blankParts(): Parts {
  return {
    frame: null!,
    cell: null!,
    cellAt: 'crosshead',
    adapters: NO_ADAPTERS,
    ends: null!,
    faces: null,
    extensometer: null,
    chamber: null,
    guard: null,
    thermocouple: null,
  };
}

export const NO_ADAPTERS: Adapters = { upper: [], lower: [] };

export function isPair({ upper, lower }: Ends): boolean {
  return upper.id === lower.id;
}

export function endItems({ upper, lower }: Ends): EndItem[] {
  return upper.id === lower.id ? [upper] : [upper, lower];
}

/** Name of the seat that grips have for separate faces; null where nothing has one. */
export function seatOf({ upper, lower }: Ends): string | null {
  return slotOf(upper) ?? slotOf(lower);
}

export function slotOf(end: EndItem): string | null {
  return end.kind === 'grip' ? end.details.faceSlot : null;
}

/** Length of the stack without the specimen, between the coupling faces of crosshead and base, mm. */
export function stackLengthMm({ cell, adapters, ends }: Pick<Parts, 'cell' | 'adapters' | 'ends'>): number {
  return (
    cell.lengthMm + lengthOf(adapters.upper) + lengthOf(adapters.lower) + ends.upper.lengthMm + lowerLengthMm(ends)
  );
}

function lengthOf(adapters: readonly Adapter[]): number {
  let sumMm = 0;
  for (const { lengthMm } of adapters) sumMm += lengthMm;
  return sumMm;
}

function massOf(adapters: readonly Adapter[]): number {
  let sumKg = 0;
  for (const { massKg } of adapters) sumKg += massKg;
  return sumKg;
}

/** Length of the lower end, mm; a pair may have halves that differ. */
export function lowerLengthMm(ends: Ends): number {
  return isPair(ends) ? (ends.lower.details.lowerLengthMm ?? ends.lower.lengthMm) : ends.lower.lengthMm;
}

function lowerMassKg(ends: Ends): number {
  return isPair(ends) ? (ends.lower.details.lowerMassKg ?? ends.lower.massKg) : ends.lower.massKg;
}

/** Mass between cell and specimen, kg: what hangs on a crosshead cell, what stands on a base cell. */
export function massOnCellKg({
  cellAt,
  adapters,
  ends,
  faces: separate,
}: Pick<Parts, 'cellAt' | 'adapters' | 'ends' | 'faces'>): number {
  const faces = separate?.massKg ?? 0;
  return cellAt === 'crosshead'
    ? massOf(adapters.upper) + ends.upper.massKg + faces
    : massOf(adapters.lower) + lowerMassKg(ends) + faces;
}
