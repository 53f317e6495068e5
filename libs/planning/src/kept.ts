import type { Problem, PublishedBooking } from './problem.js';
import { windowAround, workingWindows } from './windows.js';

/**
 * Bookings of the published plan that the freeze window keeps: they start inside it and are, each by itself, still possible
 * (job still waiting and free, frame still a candidate and open then, specimens there, units in force and in the pools).
 */
export function keptBookings(problem: Problem): PublishedBooking[] {
  if (!problem.published || problem.freezeUntilMin <= 0) return [];
  const jobs = new Map(problem.jobs.map((job) => [job.id, job]));
  return problem.published.bookings.filter((booking) => {
    const job = jobs.get(booking.jobId);
    const free = job && !job.hold && !job.running && !job.pin;
    return free && isInside(booking, problem) && isStillPossible(booking, problem);
  });
}

const isInside = (booking: PublishedBooking, { freezeUntilMin }: Problem): boolean =>
  booking.setupStartMin >= 0 && booking.setupStartMin < freezeUntilMin;

function isStillPossible(booking: PublishedBooking, problem: Problem): boolean {
  const { startMin, setupStartMin, frameId, jobId, items } = booking;
  const job = problem.jobs.find(({ id }) => id === jobId)!;
  const frame = problem.frames.find(({ id }) => id === frameId);
  const candidate = job.candidates.find(
    (one) => one.frameId === frameId && one.links.every(({ link, pool }) => pool.includes(items[link] ?? '')),
  );
  if (!frame || !candidate || startMin < job.releaseMin || job.after.length > 0) return false;
  const isOpen = windowAround(workingWindows(frame), startMin, startMin + candidate.perSpecimenMin) !== undefined;
  const isBusy = problem.jobs.some(
    ({ running }) => running && running.frameId === frameId && running.endMin > setupStartMin,
  );
  const units = problem.items.filter(({ id }) => candidate.links.some(({ link }) => items[link] === id));
  const isHeld = problem.jobs.some(
    ({ running }) =>
      running && running.endMin > setupStartMin && units.some(({ id }) => Object.values(running.items).includes(id)),
  );
  const inForce = units.every(
    (unit) => !unit.usable || windowAround(unit.usable, setupStartMin, startMin) !== undefined,
  );
  return isOpen && !isBusy && !isHeld && inForce;
}
