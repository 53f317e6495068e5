import { addMonths, localDateAt } from '#libs/calendar/src/index.js';
import type { CalibratedRangeView, RecordCalibrationBody } from '#libs/contract/src/index.js';
import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { termOf } from '#libs/metrology/src/index.js';
import { CalibrationRepository, StoredFileRepository } from '#libs/records/src/index.js';
import type { ItemEntity } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { dueMsOf } from './calibration-days.js';

/** Clocks of two labs differ. */
const CLOCK_SLACK_MS = 5 * 60_000;

/** Whether class and range come from readings, and not from the certificate. */
export function hasReadings(body: RecordCalibrationBody): boolean {
  return (body.forceReadings?.length ?? 0) > 0 || body.extensionReadings !== undefined;
}

/** Everything that keeps a calibration from being entered, by field; null where nothing is wrong. */
export async function enteringProblems(
  manager: EntityManager,
  item: ItemEntity,
  body: RecordCalibrationBody,
  { performedMs, zone, nowMs }: { performedMs: number; zone: string; nowMs: number },
): Promise<(FieldProblem | null)[]> {
  const certificate = body.certificateFileId;
  const known = !certificate || (await new StoredFileRepository(manager).exists(certificate));
  const own = body.replaces ? await new CalibrationRepository(manager).of(item.id) : [];
  return [
    performedMs > nowMs + CLOCK_SLACK_MS
      ? problem('performedAt', body.performedAt, 'a day or an instant that is over, or today')
      : null,
    body.dueAt ? dueProblem(body, performedMs, zone) : null,
    known ? null : problem('certificateFileId', certificate, 'a file that was stored'),
    !body.replaces || own.some(({ id }) => id === body.replaces)
      ? null
      : problem('replaces', body.replaces, `a calibration of ${item.tag}`),
    hasReadings(body) || (body.ranges?.length ?? 0) > 0
      ? null
      : problem('ranges', null, 'one range at least, or readings'),
    ...(body.ranges ?? []).flatMap(rangeProblems),
  ];
}

/** A date of the certificate's own must follow the calibration, and may not stretch what its standard allows. */
function dueProblem(
  { dueAt, standard }: RecordCalibrationBody,
  performedMs: number,
  zone: string,
): FieldProblem | null {
  const dueMs = dueMsOf(dueAt!, zone);
  if (dueMs <= performedMs) return problem('dueAt', dueAt, 'later than the calibration');
  const ceilingMonths = termOf(standard)?.ceilingMonths;
  // Certificates state days: the time of day at which a calibration was entered must not make the last allowed day too late.
  const isAllowed = (months: number) =>
    localDateAt(dueMs, zone) <= localDateAt(addMonths(performedMs, months, zone), zone);
  if (ceilingMonths === undefined || isAllowed(ceilingMonths)) return null;
  return problem('dueAt', dueAt, `at most ${ceilingMonths} months after the calibration, by ${standard}`);
}

const UNIT_OF: Record<CalibratedRangeView['direction'], readonly CalibratedRangeView['unit'][]> = {
  tension: ['N'],
  compression: ['N'],
  torque: ['N·m'],
  extension: ['mm'],
  temperature: ['°C'],
  speed: ['mm/min'],
};

function rangeProblems({ direction, from, to, unit }: CalibratedRangeView, index: number): (FieldProblem | null)[] {
  const path = `ranges[${index}]`;
  const lowest = direction === 'temperature' ? -273.15 : 0;
  return [
    UNIT_OF[direction].includes(unit)
      ? null
      : problem(`${path}.unit`, unit, `${UNIT_OF[direction].join(' or ')} for ${direction}`),
    from >= lowest && from < to
      ? null
      : problem(`${path}.from`, from, `at least ${lowest} and less than ${to}, its upper end`, unit),
  ];
}

function problem(field: string, found: unknown, allowed: string, unit = ''): FieldProblem {
  return fieldProblem({ field, found, allowed, unit });
}
