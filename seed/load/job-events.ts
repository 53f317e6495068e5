import type { JobState, RequestState } from '#libs/contract/src/index.js';
import { idOf } from '../northmoor/ids.js';
import { personId } from './load-people.js';
import type { WorkOf } from './work-of.js';
import type { PastEvent } from './demo-rows.js';

/** What happened to a job, and by it to its request, in order. */
export function jobEvents({ demo, job, reference, times, batch }: WorkOf): PastEvent[] {
  const actorId = personId(job.technician);
  const step = (
    at: Date | null,
    from: string,
    to: Exclude<JobState, 'waiting'>,
    why: string | null = null,
  ): PastEvent[] =>
    at
      ? [
          {
            ...{ actorId, at, why, kind: `job/${to}`, subjectKind: 'job', subjectId: idOf('job', reference) },
            ...{ before: { state: from }, after: { state: to, reference } },
          },
        ]
      : [];
  const stopped = job.state === 'paused' || job.state === 'blocked';
  const stopAt = new Date(
    times.takenAt.getTime() + (times.setupMin + times.perSpecimenMin * ((job.tested ?? 0) + 1)) * 60_000,
  );
  return [
    ...step(times.takenAt, 'ready', 'taken'),
    ...step(times.riggedAt, 'taken', 'rigged'),
    ...step(times.startedAt, 'rigged', 'running'),
    ...step(stopped ? stopAt : null, times.startedAt ? 'running' : 'rigged', job.state, job.why ?? null),
    ...step(times.finishedAt, 'running', 'done'),
    ...(times.finishedAt && demo.batches.at(-1) === batch ? requestMoved(demo, times.finishedAt) : []),
  ];
}

/** The request follows its jobs: in review once the last is done, reported, and closed some days later. */
function requestMoved({ reference, state }: WorkOf['demo'], doneAt: Date): PastEvent[] {
  const about = { subjectKind: 'request', subjectId: idOf('request', reference) };
  const at = (hours: number) => new Date(doneAt.getTime() + hours * 3_600_000);
  const move = (
    actorId: string | null,
    hours: number,
    from: string,
    to: Exclude<RequestState, 'draft'>,
  ): PastEvent => ({
    ...about,
    ...{ actorId, at: at(hours), kind: `request/${to}`, before: { state: from }, after: { state: to } },
  });
  const review = move(null, 0, 'in-work', 'in-review');
  const report = move(personId('ruth.calloway'), 3, 'in-review', 'reported');
  const close = move(personId('ruth.calloway'), 30, 'reported', 'closed');
  if (state === 'in-work') return [];
  return [review, ...(state === 'in-review' ? [] : [report]), ...(state === 'closed' ? [close] : [])];
}
