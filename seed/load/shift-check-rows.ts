import type { ShiftCheckEntity } from '#libs/records/src/index.js';
import { Chance } from '../northmoor/chance.js';
import { idOf } from '../northmoor/ids.js';
import { itemId, itemWithTag } from '../northmoor/items.js';
import { TRAINS } from '../northmoor/trains.js';
import { FAILED_CELL } from '../northmoor/trouble.js';
import type { WorkOf } from './work-of.js';
import { personId } from './load-people.js';
import { driftOf } from './tested-piece.js';

const TOLERANCE_PCT = 1;
/** The reference stands at this share of the cell's capacity. */
const REFERENCE_SHARE = 0.2;
const NOISE_PCT = 0.06;

/** The shift check before a job: it shows what the cell reads too high that day, and noise. The one of the blocked job failed. */
export function shiftCheckRow(work: WorkOf): Partial<ShiftCheckEntity> {
  const { job, reference, times } = work;
  const { frame, links } = TRAINS[job.train];
  const cell = links.find(({ role }) => role === 'load-cell')!.tag;
  const [capacity, unit] = capacityOf(cell);
  const failed = job.state === 'blocked';
  const applied = failed ? FAILED_CELL.reference : capacity * REFERENCE_SHARE;
  const errorPct = driftOf(work) * 100 + NOISE_PCT * new Chance(`check/${reference}`).normal();
  const reading = failed ? FAILED_CELL.reading : Number((applied * (1 + errorPct / 100)).toPrecision(6));
  return {
    ...shell(reference, cell, frame, applied, reading, unit),
    jobId: idOf('job', reference),
    technicianId: personId(job.technician),
    at: new Date((times.riggedAt ?? times.takenAt).getTime()),
  };
}

function shell(
  name: string,
  cell: string,
  frame: string,
  reference: number,
  reading: number,
  unit: string,
): Partial<ShiftCheckEntity> {
  const errorPct = Number(((100 * (reading - reference)) / reference).toFixed(4));
  return {
    id: idOf('shift-check', name),
    cellId: itemId(cell),
    frameId: itemId(frame),
    ...{ reference, reading, unit, errorPct },
    tolerancePct: TOLERANCE_PCT,
    passed: Math.abs(errorPct) <= TOLERANCE_PCT,
  };
}

function capacityOf(tag: string): [number, 'N' | 'N·m'] {
  const item = itemWithTag(tag);
  if (item.kind !== 'load-cell') throw new Error(`${tag} is no load cell.`);
  const { capacityN, torqueCapacityNm } = item.details;
  return capacityN > 0 ? [capacityN, 'N'] : [torqueCapacityNm, 'N·m'];
}
