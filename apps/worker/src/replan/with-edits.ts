import type { TrialEdit } from '#libs/contract/src/index.js';
import { withOneMoreUnit } from '#libs/planning/src/index.js';
import type { Problem } from '#libs/planning/src/index.js';
import type { OpenJob, Overlay, PlanFacts } from '#libs/records/src/index.js';

/** The lab as it would be with the changes of a trial plan. */
export interface Edited {
  facts: PlanFacts;
  overlay: Overlay;
  /** What is changed only once the problem stands. */
  adjust: (problem: Problem) => Problem;
}

/** Puts the changes on top of the facts, in their order: a later one on the same thing counts. */
export function withEdits(facts: PlanFacts, edits: readonly TrialEdit[]): Edited {
  const jobs = edits.reduce((list, edit) => list.map((job) => withEdit(job, edit)), facts.jobs);
  const extraItems = edits.flatMap((edit) => (edit.kind === 'extra-item' ? [edit.likeItemId] : []));
  return {
    facts: { ...facts, jobs },
    overlay: {
      down: edits.flatMap((edit) => (edit.kind === 'frame-down' ? [{ frameId: edit.frameId, ...span(edit) }] : [])),
      extraShifts: edits.flatMap((edit) =>
        edit.kind === 'extra-shift' ? [{ frameId: edit.frameId, technicianId: edit.personId, ...span(edit) }] : [],
      ),
      away: edits.flatMap((edit) =>
        edit.kind === 'technician-off' ? [{ technicianId: edit.personId, ...span(edit) }] : [],
      ),
    },
    adjust: (problem) => extraItems.reduce((changed, likeUnit) => withOneMoreUnit(changed, likeUnit), problem),
  };
}

function withEdit(job: OpenJob, edit: TrialEdit): OpenJob {
  if (!('jobId' in edit) || edit.jobId !== job.id) return job;
  switch (edit.kind) {
    case 'move':
      return { ...job, pin: { frameId: edit.frameId, startMs: Date.parse(edit.startsAt) }, hold: false };
    case 'unpin':
      return { ...job, pin: null };
    case 'hold':
      return { ...job, hold: true };
    case 'unhold':
      return { ...job, hold: false };
    case 'weight':
      return { ...job, weight: edit.weight };
  }
}

function span({ startsAt, endsAt }: { startsAt: string; endsAt: string }): { startMs: number; endMs: number } {
  return { startMs: Date.parse(startsAt), endMs: Date.parse(endsAt) };
}
