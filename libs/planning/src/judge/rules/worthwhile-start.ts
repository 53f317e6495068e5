import type { Booking } from '../../plan.js';
import type { Candidate, Job, Technician, Window } from '../../problem.js';
import { cutOut, workingWindows } from '../../windows.js';
import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/**
 * A setup is followed at once by a stint of at least `leastStintMin`, or by all of the work. A shorter stint is no breach where
 * frame and technicians leave no room for a longer one in the rest of the horizon.
 */
export function worthwhileStart(one: Case): Breach[] {
  const { leastStintMin = 0 } = one.problem;
  if (leastStintMin === 0) return [];
  return planned(one).flatMap(({ booking, job, candidate }) => {
    const least = leastStint(leastStintMin, candidate);
    if (job.attended !== 'throughout' || least === 0) return [];
    const found = firstStint(booking);
    if (found >= least || !hasRoom(one, booking, job, booking.setupMin + least)) return [];
    return [breach('worthwhile-start', [job.id], least - found, { frameId: booking.frameId, leastMin: least })];
  });
}

function leastStint(leastStintMin: number, { perSpecimenMin, specimens }: Candidate): number {
  return perSpecimenMin === 0 ? 0 : perSpecimenMin * Math.min(specimens, Math.ceil(leastStintMin / perSpecimenMin));
}

/** Minutes of work without a break right behind the setup. */
function firstStint({ setupStartMin, setupMin, stints }: Booking): number {
  const begin = setupStartMin + setupMin;
  let end = begin;
  for (const { kind, startMin, endMin } of stints) if (kind === 'work' && startMin === end) end = endMin;
  return end - begin;
}

function hasRoom(one: Case, booking: Booking, job: Job, lengthMin: number): boolean {
  const frame = one.frames.get(booking.frameId);
  if (!frame) return false;
  const open = workingWindows(frame);
  const rest = [{ startMin: booking.setupStartMin, endMin: one.problem.horizonMin }];
  const people = one.problem.technicians?.filter(
    ({ authorisations }) => job.authorisation === null || authorisations.includes(job.authorisation),
  );
  const free = people ? people.map((who) => freeTime(one, who, job.id)) : [rest];
  return free.some((windows) =>
    windows.some((window) => open.some((hours) => overlapMin([window, hours, rest[0]!]) >= lengthMin)),
  );
}

/** A technician's shifts without the stints that the plan gives them in other jobs. */
function freeTime({ plan }: Case, { id, shifts }: Technician, exceptJobId: string): Window[] {
  const busy = plan.bookings
    .filter(({ jobId }) => jobId !== exceptJobId)
    .flatMap(({ stints }) => stints.filter(({ technicianId }) => technicianId === id));
  return cutOut(shifts, busy);
}

const overlapMin = (windows: readonly Window[]): number =>
  Math.min(...windows.map(({ endMin }) => endMin)) - Math.max(...windows.map(({ startMin }) => startMin));
