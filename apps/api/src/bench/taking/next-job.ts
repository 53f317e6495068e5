import { inUse, whyNotNow } from '#libs/bench/src/index.js';
import type { InUse, PassedOver } from '#libs/bench/src/index.js';
import type { LabSettings } from '#libs/contract/src/index.js';
import type { Lab } from '#libs/matching/src/index.js';
import { readBenchNow, readPlannedWork } from '#libs/records/src/index.js';
import type { PlannedWork } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { trainFit } from '../job/train-fit.js';
import { findWork, periodOf } from '../job/work-of.js';

/** The first job of the plan that somebody may run now; or why there is none, job by job. */
export interface NextJob {
  next: Pick<PlannedWork, 'job' | 'booking'> | null;
  passedOver: PassedOver[];
}

interface Looking {
  manager: EntityManager;
  lab: Lab;
  technicianId: string;
  nowMs: number;
  frameId?: string | undefined;
}

interface Moment {
  nowMs: number;
  lab: Lab;
  settings: LabSettings;
  busy: InUse;
  methods: ReadonlySet<string>;
}

/** Walks the published plan in its order, on one frame or on all. */
export async function findNextJob({ manager, technicianId, nowMs, frameId, lab }: Looking): Promise<NextJob> {
  const { settings, methods, held } = await readBenchNow(manager, technicianId, new Date(nowMs));
  const moment: Moment = { nowMs, lab, settings, busy: inUse(held), methods };
  const passedOver: PassedOver[] = [];
  for (const planned of await readPlannedWork(manager, frameId)) {
    const why = whyNot(planned, moment);
    if (why === null) return { next: planned, passedOver };
    passedOver.push({ reference: planned.job.reference, why });
  }
  return { next: null, passedOver };
}

function whyNot(planned: PlannedWork, moment: Moment): string | null {
  const { job, booking, method } = planned;
  const ids = [booking.frameId ?? '', ...booking.train.map(({ itemId }) => itemId)];
  const takeable = {
    ...{ reference: job.reference, holdWhy: job.holdWhy, method },
    releasedAtMs: job.releasedAt?.getTime() ?? null,
    items: ids.map((id) => ({ id, tag: tagOf(moment.lab, id) })),
  };
  return whyNotNow(takeable, { ...moment, problemsOf: () => problemsOf(planned, moment) });
}

/** What the rules say against the train from now to the end of the run. */
function problemsOf({ booking, ...asked }: PlannedWork, { nowMs, lab, settings }: Moment): string[] {
  const work = findWork(asked, settings.matching);
  if (typeof work === 'string') return [work];
  const period = periodOf(work, nowMs, asked.batch.specimenCount);
  const train = { frameId: booking.frameId ?? '', links: booking.train };
  return trainFit(lab, train, work.needs, period, settings.matching).problems.map(({ sentence }) => sentence);
}

function tagOf(lab: Lab, id: string): string {
  return lab.items.find((item) => item.id === id)?.tag ?? 'An item';
}
