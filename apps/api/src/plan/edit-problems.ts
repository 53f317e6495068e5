import type { TrialEdit } from '#libs/contract/src/index.js';
import { listPeople } from '#libs/records/src/index.js';
import type { PlanAround } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';

const STEERABLE = ['waiting', 'ready', 'blocked'];

/** Why an edit cannot be tried at all: what it names does not exist, is over, or is past changing. Nothing when it can. */
export async function editProblems(
  manager: EntityManager,
  edit: TrialEdit,
  around: PlanAround,
  nowMs: number,
): Promise<string[]> {
  return [
    ...('jobId' in edit ? jobProblems(edit.jobId, around) : []),
    ...('frameId' in edit ? frameProblems(edit.frameId, around) : []),
    ...('endsAt' in edit && Date.parse(edit.endsAt) <= nowMs
      ? [`${edit.endsAt} has passed; choose a span that ends in the future.`]
      : []),
    ...(edit.kind === 'extra-item' ? itemProblems(edit.likeItemId, around) : []),
    ...('personId' in edit ? await personProblems(manager, edit.personId) : []),
  ];
}

function jobProblems(jobId: string, { jobs }: PlanAround): string[] {
  const found = jobs.get(jobId);
  if (!found) return ['There is no such open job.'];
  const { reference, state } = found.job;
  return STEERABLE.includes(state)
    ? []
    : [`${reference} is ${state}; only a job that is ${STEERABLE.join(', ')} can be changed in a plan.`];
}

function frameProblems(frameId: string, { frames }: PlanAround): string[] {
  return frames.some(({ id }) => id === frameId) ? [] : ['There is no such frame.'];
}

function itemProblems(itemId: string, { tags, frames }: PlanAround): string[] {
  if (!tags.has(itemId)) return ['There is no such item in the register.'];
  return frames.some(({ id }) => id === itemId)
    ? ['Another frame cannot be tried this way; try another unit of what is fitted on one.']
    : [];
}

async function personProblems(manager: EntityManager, personId: string): Promise<string[]> {
  const [person] = await listPeople(manager, personId);
  if (!person?.active) return ['There is no such person at work.'];
  return person.roles.includes('technician') ? [] : [`${person.name} is not a technician.`];
}
