import { createHash } from 'node:crypto';
import {
  CalibrationEntity,
  FaultEntity,
  insertRows,
  ItemEntity,
  ItemWindowEntity,
  RigLinkEntity,
  StoredFileEntity,
} from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { calibrationsAt } from '../northmoor/calibrations.js';
import type { DemoCalibration } from '../northmoor/calibrations.js';
import { idOf } from '../northmoor/ids.js';
import { itemId, itemWithTag, ITEMS } from '../northmoor/items.js';
import type { LabTime } from '../northmoor/lab-time.js';
import { RIGS } from '../northmoor/trains.js';
import { FAULTS, OUT_OF_USE, WINDOWS } from '../northmoor/trouble.js';
import type { PastEvent } from './demo-rows.js';
import { personId } from './load-people.js';

/** Items with their calibrations and certificates, what is wrong with them, and what hangs on the frames. */
export async function loadRegister(manager: EntityManager, time: LabTime): Promise<PastEvent[]> {
  await insertRows(
    manager,
    ItemEntity,
    ITEMS.map((item) => itemRow(item, time)),
  );
  const calibrations = calibrationsAt(time.nowMs);
  await insertRows(manager, StoredFileEntity, calibrations.map(certificateFile));
  await insertRows(manager, CalibrationEntity, calibrations.map(calibrationRow));
  await insertRows(
    manager,
    FaultEntity,
    FAULTS.map((fault) => faultRow(fault, time)),
  );
  await insertRows(
    manager,
    ItemWindowEntity,
    WINDOWS.map((window) => windowRow(window, time)),
  );
  await insertRows(manager, RigLinkEntity, rigRows(time));
  return FAULTS.flatMap((fault) => faultEvents(fault, time));
}

function itemRow(item: (typeof ITEMS)[number], time: LabTime): Partial<ItemEntity> {
  const { intervalMonths, details, utilities, ...same } = item;
  return {
    ...same,
    id: itemId(item.tag),
    state: OUT_OF_USE[item.tag] ? 'out-of-use' : 'in-service',
    utilities: [...utilities],
    calibrationIntervalMonths: intervalMonths,
    details: { ...details },
    registeredAt: time.daysFromNow(-1200),
  };
}

const calibrationId = ({ tag, certificateNumber }: DemoCalibration): string =>
  idOf('calibration', `${tag}/${certificateNumber}`);
const certificateId = ({ tag, certificateNumber }: DemoCalibration): string =>
  idOf('certificate', `${tag}/${certificateNumber}`);

function calibrationRow(each: DemoCalibration): Partial<CalibrationEntity> {
  const { tag, ...same } = each;
  return {
    ...same,
    id: calibrationId(each),
    itemId: itemId(tag),
    validFrom: each.performedAt,
    readings: null,
    certificateFileId: certificateId(each),
    replaces: null,
    enteredBy: personId('ian.marsh'),
    enteredAt: new Date(each.performedAt.getTime() + 3 * 3_600_000),
  };
}

/** The certificate as a short text, so that there is a file to open. */
function certificateFile(each: DemoCalibration): Partial<StoredFileEntity> {
  const { name, serialNumber } = itemWithTag(each.tag);
  const lines = [
    `Certificate of calibration ${each.certificateNumber}`,
    `${each.laboratory}`,
    `${name}, serial number ${serialNumber}, tag ${each.tag}`,
    `${each.standard}; performed ${each.performedAt.toISOString().slice(0, 10)}; as found: ${each.asFound.replaceAll('-', ' ')}`,
    ...each.ranges.map(
      ({ direction, className, from, to, unit }) => `${direction}: class ${className} from ${from} to ${to} ${unit}`,
    ),
    'Made up for the demo lab: no real laboratory, no real measurement.',
  ];
  const content = Buffer.from(`${lines.join('\n')}\n`, 'utf8');
  return {
    id: certificateId(each),
    name: `certificate-${each.certificateNumber}.txt`,
    mediaType: 'text/plain',
    sizeBytes: content.length,
    sha256: createHash('sha256').update(content).digest('hex'),
    content,
    storedBy: personId('ian.marsh'),
    storedAt: each.performedAt,
  };
}

function faultRow(
  { key, tag, what, by, opened, closed, remedy }: (typeof FAULTS)[number],
  time: LabTime,
): Partial<FaultEntity> {
  return {
    id: idOf('fault', key),
    itemId: itemId(tag),
    what,
    openedBy: personId(by),
    openedAt: time.past(...opened),
    closedBy: closed ? personId('ian.marsh') : null,
    closedAt: closed ? time.past(...closed) : null,
    remedy: remedy ?? null,
  };
}

function windowRow(
  { key, tag, kind, from, to, why }: (typeof WINDOWS)[number],
  time: LabTime,
): Partial<ItemWindowEntity> {
  return {
    id: idOf('item-window', key),
    itemId: itemId(tag),
    kind,
    startsAt: time.at(...from),
    endsAt: time.at(...to),
    why,
  };
}

function rigRows(time: LabTime): Partial<RigLinkEntity>[] {
  return RIGS.flatMap(({ frame, links }) =>
    links.map(({ role, tag }) => ({
      itemId: itemId(tag),
      frameId: itemId(frame),
      role,
      fittedAt: time.past(-1, '14:20'),
    })),
  );
}

function faultEvents({ tag, what, by, opened, closed, remedy }: (typeof FAULTS)[number], time: LabTime): PastEvent[] {
  const about = { subjectKind: 'item', subjectId: itemId(tag) };
  const open: PastEvent = {
    ...about,
    actorId: personId(by),
    kind: 'item/fault-opened',
    at: time.past(...opened),
    after: { what },
  };
  if (!closed) return [open];
  return [
    open,
    {
      ...about,
      actorId: personId('ian.marsh'),
      kind: 'item/fault-closed',
      at: time.past(...closed),
      after: { remedy },
    },
  ];
}
