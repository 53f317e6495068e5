import { RequestRepository } from '#libs/records/src/index.js';
import type { RequestEntity } from '#libs/records/src/index.js';
import type { AtWork } from '../job/job-acts.js';

const OVER: readonly string[] = ['done', 'aborted'];

/** With the first of its jobs that starts, a request is in work. */
export async function requestBegins(at: AtWork): Promise<void> {
  const request = await at.jobs.lockRequest(at.job.requestId);
  if (request.state === 'accepted') await moveRequest(at, request, 'in-work');
}

/** With the last of its jobs that ends, a request is in review. */
export async function requestEnds(at: AtWork): Promise<void> {
  const request = await at.jobs.lockRequest(at.job.requestId);
  const jobs = await at.jobs.ofRequest(request.id);
  if (request.state === 'in-work' && jobs.every(({ state }) => OVER.includes(state)))
    await moveRequest(at, request, 'in-review');
}

async function moveRequest(
  { manager, record }: AtWork,
  request: RequestEntity,
  to: 'in-work' | 'in-review',
): Promise<void> {
  await new RequestRepository(manager).change(request, { state: to });
  const [before, after] = [{ state: request.state }, { state: to }];
  await record({ kind: `request/${to}`, subjectId: request.id, before, after });
}
