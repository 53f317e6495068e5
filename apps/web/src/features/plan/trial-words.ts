import type { TrialEdit, TrialView } from '#libs/contract/src/index.js';
import type { Moments } from '../../ui/moments.js';

/** What a change of a trial plan does, in words. */
export function editText(edit: TrialEdit, { plan }: TrialView, { moment }: Moments): string {
  const frame = (id: string) => plan?.lanes.find((lane) => lane.frame.id === id)?.frame.tag ?? 'a frame';
  const all = plan?.lanes.flatMap(({ bookings }) => bookings) ?? [];
  const others = [...(plan?.held ?? []), ...(plan?.unplaced ?? [])];
  const job = (id: string) => [...all, ...others].find(({ jobId }) => jobId === id)?.jobReference ?? 'a job';
  switch (edit.kind) {
    case 'move':
      return `${job(edit.jobId)} to ${frame(edit.frameId)} at ${moment(edit.startsAt)}`;
    case 'unpin':
      return `${job(edit.jobId)} may move again`;
    case 'hold':
      return `${job(edit.jobId)} held: ${edit.why}`;
    case 'unhold':
      return `${job(edit.jobId)} released`;
    case 'frame-down':
      return `${frame(edit.frameId)} down from ${moment(edit.startsAt)} to ${moment(edit.endsAt)}: ${edit.why}`;
    case 'extra-shift':
      return `${frame(edit.frameId)} also open from ${moment(edit.startsAt)} to ${moment(edit.endsAt)}`;
    case 'extra-item':
      return 'one more item like an existing one';
    case 'technician-off':
      return `a technician away from ${moment(edit.startsAt)} to ${moment(edit.endsAt)}`;
    case 'weight':
      return `${job(edit.jobId)} weighs ${edit.weight}`;
  }
}
