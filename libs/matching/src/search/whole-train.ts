import type { Frame } from '../item.js';
import type { Adapters, Parts } from '../parts.js';
import { checksOf, otherChecks } from './checks.js';
import {
  FRAME_CELL,
  FRAME_CHAMBER,
  FRAME_ENDS,
  FRAME_EXTENSOMETER,
  FRAME_GUARD,
  FRAME_THERMOCOUPLE,
} from './class-choices.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { FRAME_ALONE } from './frame-tally.js';
import { PART_CHECKS } from './options.js';
import type { ClassChoices } from './class-choices.js';
import type { LabIndex } from './lab-index.js';
import type { RequestContext } from './request-context.js';
import type { Routes } from './routes.js';

/** Everything that the search of one request has at hand. */
export interface Search {
  index: LabIndex;
  context: RequestContext;
  routes: Routes;
  /** Frames of one class share their choices. */
  choicesFor(frame: Frame, classKey: string): ClassChoices;
}

export const ADAPTER_CHECKS = checksOf(['adapters']);

/** Checks that only a whole train can answer. */
export const WHOLE_CHECKS = otherChecks(
  FRAME_ALONE,
  FRAME_CELL,
  FRAME_ENDS,
  FRAME_EXTENSOMETER,
  FRAME_CHAMBER,
  FRAME_GUARD,
  FRAME_THERMOCOUPLE,
  PART_CHECKS,
  ADAPTER_CHECKS,
);

export function trainOf(
  frame: Frame,
  cell: CellChoice,
  ends: Choice<Parts['ends']>,
  adapters: Adapters,
  beside: BesideChoice,
): Parts {
  return {
    frame,
    cell: cell.part,
    cellAt: cell.cellAt,
    adapters,
    ends: ends.part,
    extensometer: beside.extensometer.part,
    chamber: beside.chamber.part,
    guard: beside.guard.part,
    thermocouple: beside.thermocouple.part,
  };
}
