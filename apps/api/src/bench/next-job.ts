import type { LabSettings } from '#libs/contract/src/index.js';
import type { Lab } from '#libs/matching/src/index.js';
import { benchNow, plannedWork } from '#libs/records/src/index.js';
import type { PlannedWork } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { inUse } from './in-use.js';
import type { InUse } from './in-use.js';
import { findWork, periodOf } from './needed.js';
import { trainFit } from './train-fit.js';

/** The first job of the plan that somebody may run now; or why there is none, job by job. */
export interface NextJob {
  next: Pick<PlannedWork, 'job' | 'booking'> | null;
  passedOver: { reference: string; why: string }[];
}

interface Looking {
  manager: EntityManager;
  lab: Lab;
  technicianId: string;
  nowMs: number;
  frameId?: string | undefined;
}

/** What decides whether a job may be taken now. */
export interface Moment {
  nowMs: number;
  lab: Lab;
  settings: LabSettings;
  busy: InUse;
  /** Codes of the methods that the technician may run now. */
  methods: ReadonlySet<string>;
}

/** Walks the published plan in its order, on one frame or on all. */
export async function findNextJob({ manager, technicianId, nowMs, frameId, lab }: Looking): Promise<NextJob> {
  const { settings, methods, held } = await benchNow(manager, technicianId, new Date(nowMs));
  const moment: Moment = { nowMs, lab, settings, busy: inUse(held), methods };
  const passedOver: NextJob['passedOver'] = [];
  for (const planned of await plannedWork(manager, frameId)) {
    const why = whyNotNow(planned, moment);
    if (why === null) return { next: planned, passedOver };
    passedOver.push({ reference: planned.job.reference, why });
  }
  return { next: null, passedOver };
}

/** Why a job cannot be taken now, or null. Cheap questions first: most jobs of a plan lie in the future or need somebody else. */
export function whyNotNow({ job, booking, ...asked }: PlannedWork, moment: Moment): string | null {
  const { lab, nowMs, settings, busy, methods } = moment;
  const waits = job.releasedAt === null || job.releasedAt.getTime() > nowMs;
  if (waits) return 'its specimens are not here or not conditioned';
  if (job.holdWhy !== null) return `the manager holds it: ${job.holdWhy}`;
  if (!methods.has(asked.method.code)) return `you are not authorised for ${asked.method.designation}`;
  const used = [booking.frameId ?? '', ...booking.train.map(({ itemId }) => itemId)].find((id) => busy.has(id));
  if (used !== undefined) return `${tagOf(lab, used)} is in use by ${busy.get(used)}`;
  const work = findWork(asked, settings.matching);
  if (typeof work === 'string') return work;
  const period = periodOf(work, nowMs, asked.batch.specimenCount);
  const train = { frameId: booking.frameId ?? '', links: booking.train };
  const { problems } = trainFit(lab, train, work.needs, period, settings.matching);
  return problems.length > 0 ? problems.map(({ sentence }) => sentence).join(' ') : null;
}

function tagOf(lab: Lab, id: string): string {
  return lab.items.find((item) => item.id === id)?.tag ?? 'An item';
}

const NAMED = 3;

/** Why there is nothing to take, in words. */
export function nothingWhy({ passedOver }: NextJob): string {
  if (passedOver.length === 0)
    return 'No job that is ready stands in the plan. When specimens come in or the plan changes, this page shows it.';
  const rest = passedOver.length > NAMED ? ` ${passedOver.length - NAMED} more wait likewise.` : '';
  return (
    passedOver
      .slice(0, NAMED)
      .map(({ reference, why }) => `${reference}: ${why.replace(/\.$/, '')}.`)
      .join(' ') + rest
  );
}
