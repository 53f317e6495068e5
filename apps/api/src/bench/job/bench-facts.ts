import { checksFor, inUse, isOpen, soakMinOf } from '#libs/bench/src/index.js';
import type { BenchCheck, InUse } from '#libs/bench/src/index.js';
import type { Item, Lab, Verdict } from '#libs/matching/src/index.js';
import type { ShiftCheckReason } from '#libs/metrology/src/index.js';
import { readJobAtBench } from '#libs/records/src/index.js';
import type { JobAtBench, TrainLink } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { shiftCheckReason } from './shift-check-reason.js';
import { trainFit } from './train-fit.js';
import type { TrainFit } from './train-fit.js';
import { periodOf, workOf } from './work-of.js';
import type { Work } from './work-of.js';

/** A job with all that the bench decides from. */
export interface BenchFacts extends JobAtBench {
  nowMs: number;
  lab: Lab;
  work: Work;
  frameId: string | null;
  /** Of the job, or of its booking before it is taken. */
  train: readonly TrainLink[];
  trainItems: { role: string; item: Item }[];
  /** Items and frames that other jobs have. */
  busy: InUse;
  specimensLeft: number;
  /** What keeps the train from being used from now to the end of the run. */
  fit: TrainFit;
  shiftCheckReason: ShiftCheckReason | null;
  checksAsked: BenchCheck[];
  /** Whether its technician may run the method now. */
  authorised: boolean;
}

/**
 * Reads it through the manager of the caller's transaction; `lab` must be as new as what is decided from it.
 *
 * @throws LabError `job/unknown`
 */
export async function readBenchFacts(
  manager: EntityManager,
  jobId: string,
  lab: Lab,
  nowMs: number,
): Promise<BenchFacts> {
  const at = await readJobAtBench(manager, jobId, new Date(nowMs));
  const { job, settings, closedDays, methods, held } = at;
  const busy = inUse(held, jobId);
  const work = workOf(at, settings.matching);
  const train: readonly TrainLink[] = job.train.length > 0 ? job.train : (at.booking?.train ?? []);
  const frameId = job.frameId ?? at.booking?.frameId ?? null;
  const specimensLeft = at.specimens.filter(isOpen).length;
  const setupMin = job.state === 'taken' || job.state === 'ready' ? work.needs.setupMin : 0;
  const period = periodOf(work, nowMs, specimensLeft, setupMin);
  const fit = trainFit(lab, { frameId: frameId ?? '', links: train }, work.needs, period, settings.matching);
  const trainItems = itemsOf(train, lab);
  const cellId = train.find(({ role }) => role === 'load-cell')?.itemId;
  const reason = shiftCheckReason({
    nowMs,
    settings,
    closedDays,
    cellId,
    rig: at.rig,
    last: at.shiftCheck,
  });
  const authorised = methods.has(work.method.id);
  return {
    ...at,
    ...{ nowMs, lab, work, frameId, train, trainItems, busy, specimensLeft, fit, authorised },
    shiftCheckReason: reason,
    checksAsked: checksFor({
      needs: work.needs,
      train: trainItems,
      frameTag: at.frame?.tag ?? 'the frame',
      limitStops: fit.limitStops,
      guardNeeded: fit.verdicts.some(isGuardDemand),
      soakMin: soakMinIn(trainItems, work),
      ...{ settings, shiftCheck: reason },
    }),
  };
}

function itemsOf(train: readonly TrainLink[], lab: Lab): { role: string; item: Item }[] {
  const items = new Map(lab.items.map((item) => [item.id, item]));
  return train.flatMap(({ role, itemId }) => {
    const item = items.get(itemId);
    return item ? [{ role, item }] : [];
  });
}

/** Hazards alone make a guard wise; the other reasons demand it. */
function isGuardDemand({ rule, reason }: Verdict): boolean {
  return rule === 'guarding' && reason !== '' && reason !== 'hazards';
}

function soakMinIn(train: BenchFacts['trainItems'], { needs }: Work): number | null {
  const chamber = train.flatMap(({ item }) => (item.kind === 'chamber' ? [item] : []))[0];
  return chamber ? soakMinOf(chamber.details, needs.specimen.bodyThicknessMm) : null;
}
