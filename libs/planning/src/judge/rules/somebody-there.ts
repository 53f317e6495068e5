import type { Stint } from '../../plan.js';
import type { Job } from '../../problem.js';
import { windowAround } from '../../windows.js';
import { breach, grouped, overlaps, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Setups, and work that needs somebody, have a technician who is authorised, on shift, and nowhere else meanwhile. */
export function somebodyThere(one: Case): Breach[] {
  if (!one.problem.technicians) return [];
  const stints = planned(one).flatMap(({ booking, job }) =>
    booking.stints
      .filter(({ kind }) => kind === 'setup' || job.attended === 'throughout')
      .map((stint) => ({ ...stint, job })),
  );
  const unfit = stints.flatMap((stint) => unfitFor(one, stint, stint.job));
  const twice = [...grouped(stints, ({ technicianId }) => technicianId ?? '')].flatMap(([technicianId, all]) =>
    overlaps(all).map(({ held, next, byMin }) =>
      breach('technician-in-one-place', [held.job.id, next.job.id], byMin, { technicianId }),
    ),
  );
  return [...unfit, ...twice.filter(({ facts }) => facts.technicianId !== '')];
}

function unfitFor({ technicians }: Case, { technicianId, startMin, endMin }: Stint, job: Job): Breach[] {
  if (startMin === endMin) return [];
  const who = technicians.get(technicianId ?? '');
  if (!who) return [breach('somebody-there', [job.id], endMin - startMin, { startMin })];
  const isAuthorised = job.authorisation === null || who.authorisations.includes(job.authorisation);
  return [
    ...(isAuthorised
      ? []
      : [breach('authorised', [job.id], 0, { technicianId: who.id, authorisation: job.authorisation! })]),
    ...(windowAround(who.shifts, startMin, endMin)
      ? []
      : [breach('on-shift', [job.id], 0, { technicianId: who.id, startMin, endMin })]),
  ];
}
