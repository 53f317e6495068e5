import type { CalibratedRangeView, ItemDetail, RecordCalibrationBody } from '#libs/contract/src/index.js';
import { decimalMarkIn, parseHinted } from '#libs/units/src/index.js';
import { emptyExtension, emptyForce, extensionBody, extensionProblems, forceBody, forceProblems } from './readings.js';
import type { ExtensionTyped, ForceTyped } from './readings.js';

/** One range as the certificate states it. */
export interface RangeTyped {
  direction: string;
  className: string;
  from: string;
  to: string;
}

/** A calibration as it is typed. */
export interface CalibrationTyped {
  standard: string;
  certificateNumber: string;
  laboratory: string;
  /** Days such as `2026-11-25`. */
  performedAt: string;
  dueAt: string;
  asFound: string;
  /** Where class and range come from. */
  basis: 'readings' | 'certificate';
  force: ForceTyped[];
  extension: ExtensionTyped;
  ranges: RangeTyped[];
}

export const UNIT_OF: Record<string, CalibratedRangeView['unit']> = {
  tension: 'N',
  compression: 'N',
  torque: 'N·m',
  extension: 'mm',
  temperature: '°C',
  speed: 'mm/min',
};

type Item = Pick<ItemDetail, 'kind' | 'details'>;

/** What a calibration of an item is of, unless somebody says otherwise. */
export function usualDirection({ kind, details }: Item): string {
  if (kind === 'extensometer') return 'extension';
  if (Number(details['torqueCapacityNm'] ?? 0) > 0 && Number(details['capacityN'] ?? 0) === 0) return 'torque';
  return kind === 'load-cell' ? 'tension' : 'temperature';
}

/** Whether class and range of an item can be worked out from readings. */
export function hasReadings({ kind }: Pick<ItemDetail, 'kind'>): boolean {
  return kind === 'extensometer' || kind === 'load-cell';
}

/** The form before anybody types. @param today e.g. `2026-11-25` */
export function startOf(item: Item, today: string): CalibrationTyped {
  const { kind, details } = item;
  const usual = usualDirection(item);
  const gaugeLengthMm = (details['gaugeLengthsMm'] as number[] | undefined)?.[0] ?? 50;
  const capacity = Number(details[usual === 'torque' ? 'torqueCapacityNm' : 'capacityN'] ?? 0);
  return {
    standard: kind === 'extensometer' ? 'ISO 9513' : 'ISO 7500-1',
    certificateNumber: '',
    laboratory: '',
    performedAt: today,
    dueAt: '',
    asFound: '',
    basis: hasReadings(item) ? 'readings' : 'certificate',
    force: [emptyForce(usual === 'torque' ? 'torque' : 'tension', capacity, usual === 'torque' ? 'N·m' : 'N')],
    extension: emptyExtension(Number(gaugeLengthMm)),
    ranges: [{ direction: usual, className: '1', from: '', to: '' }],
  };
}

/** What cannot be read of the readings, in sentences; none where all can be sent. */
export function readingProblems({ kind }: Pick<ItemDetail, 'kind'>, typed: CalibrationTyped): string[] {
  if (typed.basis === 'certificate') return [];
  return kind === 'extensometer' ? extensionProblems(typed.extension) : typed.force.flatMap(forceProblems);
}

/** The readings as the server takes them. */
export function readingsBody({ kind }: Pick<ItemDetail, 'kind'>, typed: CalibrationTyped) {
  return kind === 'extensometer'
    ? { extensionReadings: extensionBody(typed.extension) }
    : { forceReadings: typed.force.map(forceBody) };
}

export function calibrationBody(
  item: Pick<ItemDetail, 'kind'>,
  typed: CalibrationTyped,
  certificateFileId: string | null,
): RecordCalibrationBody {
  const { standard, certificateNumber, laboratory, performedAt, dueAt, asFound, basis, ranges } = typed;
  return {
    standard,
    certificateNumber,
    laboratory,
    performedAt,
    asFound: asFound as RecordCalibrationBody['asFound'],
    ...(dueAt ? { dueAt } : {}),
    ...(basis === 'readings' ? readingsBody(item, typed) : { ranges: ranges.map(rangeOf) }),
    ...(certificateFileId ? { certificateFileId } : {}),
  };
}

/** What has to be typed before a calibration can be kept, by field. */
export function missingOf({ certificateNumber, laboratory, standard, performedAt, asFound }: CalibrationTyped) {
  const missing: Record<string, string> = {};
  if (!certificateNumber.trim()) missing['certificateNumber'] = 'Give the number of the certificate.';
  if (!laboratory.trim()) missing['laboratory'] = 'Say which laboratory did it.';
  if (!standard.trim()) missing['standard'] = 'Say by which standard it was done.';
  if (!performedAt) missing['performedAt'] = 'Give the day on the certificate.';
  if (!asFound) missing['asFound'] = 'Say how it was found, before any adjustment.';
  return missing;
}

function rangeOf({ direction, className, from, to }: RangeTyped): CalibratedRangeView {
  const mark = decimalMarkIn([from, to]);
  const figure = (text: string) => {
    const number = parseHinted(text, { mark });
    return 'reason' in number ? NaN : number.value;
  };
  return {
    direction: direction as CalibratedRangeView['direction'],
    className: className || null,
    from: figure(from),
    to: figure(to),
    unit: UNIT_OF[direction] ?? 'N',
  };
}
