import { NO_ADAPTERS } from '../parts.js';
import type { Adapters, Parts } from '../parts.js';
import { openingsOf } from '../space.js';
import { checksOf, otherChecks } from './checks.js';
import {
  FRAME_CELL,
  FRAME_CHAMBER,
  FRAME_ENDS,
  FRAME_EXTENSOMETER,
  FRAME_FACES,
  FRAME_GUARD,
  FRAME_THERMOCOUPLE,
} from './class-choices.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { FRAME_ALONE } from './frame-tally.js';
import { PART_CHECKS } from './options.js';
import type { RequestContext } from './request-context.js';

export const ADAPTER_CHECKS = checksOf(['adapters']);

/** Checks that only a whole train can answer. */
export const WHOLE_CHECKS = otherChecks(
  FRAME_ALONE,
  FRAME_CELL,
  FRAME_ENDS,
  FRAME_FACES,
  FRAME_EXTENSOMETER,
  FRAME_CHAMBER,
  FRAME_GUARD,
  FRAME_THERMOCOUPLE,
  PART_CHECKS,
  ADAPTER_CHECKS,
);

/** Length that adapters may add so that the train fits the opening, mm; nothing fits when `most` is below `least`. */
export function adapterRoomMm(
  { frame, cell, ends }: Pick<Parts, 'frame' | 'cell' | 'ends'>,
  { needs, settings }: RequestContext,
): { least: number; most: number } {
  const { leastMm, mostMm } = openingsOf({ cell, ends, adapters: NO_ADAPTERS }, needs);
  const { openingMinMm, openingMaxMm } = frame.details;
  return { least: openingMinMm - leastMm - SLACK_MM, most: openingMaxMm - mostMm - settings.clearanceMm + SLACK_MM };
}

/** Keeps the estimate on the safe side of the rounding; the rule itself decides. */
const SLACK_MM = 1e-6;

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
