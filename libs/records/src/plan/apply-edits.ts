import { randomUUID } from 'node:crypto';
import type { TrialEdit } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { LessThan, MoreThan } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { RosterShiftEntity } from '../people/roster-shift.entity.js';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { ItemWindowEntity } from '../register/item-window.entity.js';
import { RequestEntity } from '../requests/request.entity.js';
import { PlanJobRepository } from './plan-job.repository.js';

/**
 * Makes the changes of a trial plan true for the lab, in the caller's transaction.
 *
 * @throws LabError `trial/cannot-be-published` for an edit that only buying could make true
 */
export async function applyEdits(manager: EntityManager, edits: readonly TrialEdit[]): Promise<void> {
  for (const edit of edits) await applyEdit(manager, edit);
}

async function applyEdit(manager: EntityManager, edit: TrialEdit): Promise<void> {
  const jobs = new PlanJobRepository(manager);
  switch (edit.kind) {
    case 'move':
      await jobs.steer(edit.jobId, { pinFrameId: edit.frameId, pinStartAt: new Date(edit.startsAt) });
      return;
    case 'unpin':
      await jobs.steer(edit.jobId, { pinFrameId: null, pinStartAt: null });
      return;
    case 'hold':
      await jobs.steer(edit.jobId, { holdWhy: edit.why });
      return;
    case 'unhold':
      await jobs.steer(edit.jobId, { holdWhy: null });
      return;
    case 'frame-down':
      await addWindow(manager, edit.frameId, 'down', edit, edit.why);
      return;
    case 'extra-shift':
      await addWindow(manager, edit.frameId, 'extra-shift', edit, '');
      await insertRows(manager, RosterShiftEntity, [{ id: randomUUID(), personId: edit.personId, ...span(edit) }]);
      return;
    case 'technician-off':
      await takeOff(manager, edit.personId, span(edit));
      return;
    case 'weight': {
      const job = await manager.findOneByOrFail(JobEntity, { id: edit.jobId });
      await updateRows(manager, RequestEntity, { id: job.requestId }, { weight: edit.weight });
      return;
    }
    case 'extra-item':
      throw new LabError(
        'trial/cannot-be-published',
        'This trial plan counts on a unit that the lab does not have. Register it first, or take that change out.',
      );
  }
}

interface Span {
  startsAt: Date;
  endsAt: Date;
}

function span({ startsAt, endsAt }: { startsAt: string; endsAt: string }): Span {
  return { startsAt: new Date(startsAt), endsAt: new Date(endsAt) };
}

async function addWindow(
  manager: EntityManager,
  itemId: string,
  kind: ItemWindowEntity['kind'],
  edit: { startsAt: string; endsAt: string },
  why: string,
): Promise<void> {
  await insertRows(manager, ItemWindowEntity, [{ id: randomUUID(), itemId, kind, ...span(edit), why }]);
}

/** Cuts a span out of somebody's roster: shifts within it go, those that reach into it are shortened or split. */
async function takeOff(manager: EntityManager, personId: string, off: Span): Promise<void> {
  const touched = await manager.findBy(RosterShiftEntity, {
    personId,
    startsAt: LessThan(off.endsAt),
    endsAt: MoreThan(off.startsAt),
  });
  for (const shift of touched) {
    await manager.delete(RosterShiftEntity, { id: shift.id });
    const left = [
      { startsAt: shift.startsAt, endsAt: off.startsAt },
      { startsAt: off.endsAt, endsAt: shift.endsAt },
    ].filter(({ startsAt, endsAt }) => startsAt < endsAt);
    for (const rest of left) await insertRows(manager, RosterShiftEntity, [{ id: randomUUID(), personId, ...rest }]);
  }
}
