import { MS_PER_MINUTE } from '#libs/calendar/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import { Chance } from '../northmoor/chance.js';
import type { LabTime } from '../northmoor/lab-time.js';
import type { DemoJob } from '../northmoor/demo-request.js';

/** When a job of the demo was taken, rigged, started and done; null for what has not happened. */
export interface JobTimes {
  takenAt: Date;
  riggedAt: Date | null;
  startedAt: Date | null;
  finishedAt: Date | null;
  setupMin: number;
  perSpecimenMin: number;
}

const STARTED = ['running', 'paused', 'done'];
const RIGGED = ['rigged', 'blocked', ...STARTED];

/** Times with the ordinary scatter of such work; the lab measures every piece three times and is slower than the method's own figure. */
export function jobTimes(job: DemoJob, reference: string, specimens: number, method: Method, time: LabTime): JobTimes {
  const chance = new Chance(`times/${reference}`);
  const takenAt = typeof job.began === 'number' ? time.minutesAgo(job.began) : time.past(...job.began);
  const setupMin = Math.round(method.defaultSetupMin * chance.between(0.75, 1.3));
  const perSpecimenMin = method.defaultMinPerSpecimen * chance.between(1.1, 1.7);
  const after = (minutes: number) => new Date(takenAt.getTime() + Math.round(minutes) * MS_PER_MINUTE);
  return {
    takenAt,
    riggedAt: RIGGED.includes(job.state) ? after(setupMin - 4) : null,
    startedAt: STARTED.includes(job.state) ? after(setupMin) : null,
    finishedAt: job.state === 'done' ? after(setupMin + perSpecimenMin * specimens) : null,
    setupMin,
    perSpecimenMin,
  };
}
