import type { Adapters, Parts } from '../rules/parts.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';

/** Puts other things beside the specimen of a train that is being put together. */
export function standBeside(parts: Parts, { extensometer, chamber, guard, thermocouple }: BesideChoice): void {
  parts.extensometer = extensometer.part;
  parts.chamber = chamber.part;
  parts.guard = guard.part;
  parts.thermocouple = thermocouple.part;
}

export function trainOf(
  frame: Parts['frame'],
  cell: CellChoice,
  ends: Choice<Parts['ends']>,
  faces: Choice<Parts['faces']>,
  adapters: Adapters,
  beside: BesideChoice,
): Parts {
  return {
    frame,
    cell: cell.part,
    cellAt: cell.cellAt,
    adapters,
    ends: ends.part,
    faces: faces.part,
    extensometer: beside.extensometer.part,
    chamber: beside.chamber.part,
    guard: beside.guard.part,
    thermocouple: beside.thermocouple.part,
  };
}
