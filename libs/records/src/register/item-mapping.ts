import { subtractWindows } from '#libs/calendar/src/index.js';
import type { CalibratedQuantity, Calibration, Item, TimeWindow } from '#libs/matching/src/index.js';
import type { CalibrationEntity } from '../calibration/calibration.entity.js';
import type { FaultEntity } from './fault.entity.js';
import type { ItemWindowEntity } from './item-window.entity.js';
import type { ItemEntity } from './item.entity.js';

/**
 * The one road from the register into matching: a row with what hangs on it becomes an item.
 *
 * @param calibrations all of the item's, in any order
 * @param faults all of the item's; an open one makes it faulty whatever its row says
 * @param windows when it is down, lent or away
 */
export function itemOf(
  row: ItemEntity,
  calibrations: readonly CalibrationEntity[],
  faults: readonly FaultEntity[],
  windows: readonly ItemWindowEntity[],
): Item {
  const open = faults.some(({ closedAt }) => closedAt === null);
  return {
    kind: row.kind,
    id: row.id,
    tag: row.tag,
    name: row.name,
    model: row.model,
    state: open && row.state === 'in-service' ? 'faulty' : row.state,
    place: row.place,
    massKg: row.massKg,
    lengthMm: row.lengthMm,
    ratings: row.ratings,
    temperatureMinC: row.temperatureMinC,
    temperatureMaxC: row.temperatureMaxC,
    utilities: row.utilities,
    needsCalibration: row.needsCalibration,
    calibrations: calibrationsOf(calibrations),
    heldWindows: windows.filter(({ kind }) => kind !== 'extra-shift').map(spanOf),
    details: row.details,
  } as Item; // `checkItem` let nothing else into the row than the details of its kind
}

/**
 * The calibrations that count: one that was replaced by a correction does not, one without a class vouches for nothing,
 * and a newer one of the same direction ends the older from the instant on which it becomes valid.
 */
export function calibrationsOf(rows: readonly CalibrationEntity[]): Calibration[] {
  const counting = standing(rows);
  return counting.flatMap((row) =>
    row.ranges.flatMap(({ direction, className, from, to }) => {
      if (className === null) return [];
      const said = { direction, standard: row.standard, className, from, to };
      return inForce(row, direction, counting).map(({ startMs, endMs }) => ({
        ...said,
        validFromMs: startMs,
        dueMs: endMs,
      }));
    }),
  );
}

/** Calibrations without those that a correction replaced. */
export function standing<Row extends Pick<CalibrationEntity, 'id' | 'replaces'>>(rows: readonly Row[]): Row[] {
  const replaced = new Set(rows.map(({ replaces }) => replaces));
  return rows.filter(({ id }) => !replaced.has(id));
}

/** When a calibration of a direction is in force: until it is due, or until the next one begins. */
function inForce(
  row: CalibrationEntity,
  direction: CalibratedQuantity,
  all: readonly CalibrationEntity[],
): TimeWindow[] {
  const newer = all
    .filter((other) => isNewer(other, row) && other.ranges.some((range) => range.direction === direction))
    .map(({ validFrom }) => validFrom.getTime());
  const own = { startMs: row.validFrom.getTime(), endMs: row.dueAt.getTime() };
  return newer.length === 0 ? [own] : subtractWindows([own], [{ startMs: Math.min(...newer), endMs: Infinity }]);
}

/** Certificates often state the day alone: of two from one day, the one entered later is the newer. */
function isNewer(other: CalibrationEntity, row: CalibrationEntity): boolean {
  const [others, own] = [other.performedAt.getTime(), row.performedAt.getTime()];
  return others > own || (others === own && other.enteredAt > row.enteredAt);
}

/** A row with a start and an end as a span of milliseconds. */
export function spanOf({ startsAt, endsAt }: { startsAt: Date; endsAt: Date }): TimeWindow {
  return { startMs: startsAt.getTime(), endMs: endsAt.getTime() };
}
