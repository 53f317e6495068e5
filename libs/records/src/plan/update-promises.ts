import { eventWords } from '#libs/contract/src/index.js';
import { In } from 'typeorm';
import { JobRepository } from '../jobs/job.repository.js';
import { JobEntity } from '../jobs/job.entity.js';
import type { Act } from '../record/act.js';
import { RequestEntity } from '../requests/request.entity.js';

/** A promise that moves by less is not worth a word. */
const WORTH_A_WORD_MS = 4 * 3_600_000;

/**
 * Takes back the promise of requests that have a job without a place in the plan, and says why.
 *
 * @param reasons by request, the sentence that the team reads
 */
export async function withdrawPromises({ manager, record }: Act, reasons: ReadonlyMap<string, string>): Promise<void> {
  if (reasons.size === 0) return;
  for (const request of await manager.findBy(RequestEntity, { id: In([...reasons.keys()]) })) {
    const note = `No date can be promised: ${reasons.get(request.id)!}`;
    await manager.query(
      'update request set promise50_at = null, promise80_at = null, promise_note = $2 where id = $1',
      [request.id, note],
    );
    if (request.promise80At === null) continue;
    await record({
      kind: 'request/promise-moved',
      subjectId: request.id,
      actorId: null,
      before: { promise80At: request.promise80At },
      after: { promise80At: null },
      why: note,
    });
  }
}

/**
 * Gives requests their promise dates; when one moves, it is said by how much and why. The team hears of it where the due date is in
 * question: a plan is made anew many times a day, and a date that holds is no news.
 */
export async function updatePromises(
  { manager, record }: Act,
  promises: ReadonlyMap<string, { at50: Date; at80: Date }>,
  because: string,
): Promise<void> {
  if (promises.size === 0) return;
  const requests = await manager.findBy(RequestEntity, { id: In([...promises.keys()]) });
  for (const request of requests) {
    const { at50, at80 } = promises.get(request.id)!;
    const movedMs = request.promise80At === null ? 0 : at80.getTime() - request.promise80At.getTime();
    const tell = Math.abs(movedMs) >= WORTH_A_WORD_MS;
    const note = tell
      ? `${movedWords(movedMs)} than was said before, because ${eventWords(because)}.`
      : request.promiseNote;
    // Without the version: a promise is no edit, and must not disturb somebody who edits the request.
    await manager.query('update request set promise50_at = $2, promise80_at = $3, promise_note = $4 where id = $1', [
      request.id,
      at50,
      at80,
      note,
    ]);
    if (tell && isInQuestion(request.dueAt, request.promise80At, at80)) {
      await record({
        kind: 'request/promise-moved',
        subjectId: request.id,
        actorId: null,
        before: { promise80At: request.promise80At },
        after: { promise80At: at80 },
        why: `It is now ${movedMs > 0 ? 'later' : 'earlier'}, because ${eventWords(because)}.`,
      });
    }
  }
}

function movedWords(movedMs: number): string {
  const hours = Math.round(Math.abs(movedMs) / 3_600_000);
  return `${hours < 48 ? `${hours} h` : `${Math.round(hours / 24)} days`} ${movedMs > 0 ? 'later' : 'earlier'}`;
}

/** Whether the due date is missed, or was about to be; without one every promise counts. */
function isInQuestion(dueAt: Date | null, before: Date | null, after: Date): boolean {
  return dueAt === null || after > dueAt || (before !== null && before > dueAt);
}

/** Jobs that were blocked by an item and have a place in the plan again can be taken again. */
export async function releaseBlocked({ manager, record }: Act, jobIds: readonly string[]): Promise<void> {
  const blocked = await manager.findBy(JobEntity, { id: In([...jobIds]), state: 'blocked' });
  for (const job of blocked) {
    await new JobRepository(manager).move(job, 'unblock', {
      why: null,
      frameId: null,
      technicianId: null,
      train: [],
      checks: {},
    });
    await record({
      kind: 'job/unblocked',
      subjectId: job.id,
      actorId: null,
      before: { state: 'blocked' },
      after: { state: 'ready' },
      why: 'It has another load train in the plan',
    });
  }
}
