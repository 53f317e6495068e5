import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** All specimens are run, each without a break, from the start to the end of the booking. */
export function workComplete(one: Case): Breach[] {
  return planned(one).flatMap(({ booking, job, candidate }) => {
    const work = booking.stints.filter(({ kind }) => kind === 'work');
    const needMin = candidate.perSpecimenMin * candidate.specimens;
    const doneMin = work.reduce((sum, { startMin, endMin }) => sum + endMin - startMin, 0);
    const isCut = (min: number): boolean => candidate.perSpecimenMin > 0 && min % candidate.perSpecimenMin !== 0;
    const cut = work.filter(({ startMin, endMin }) => isCut(endMin - startMin));
    const isFramed = work[0]?.startMin === booking.startMin && work.at(-1)?.endMin === booking.endMin;
    const isInOnePiece = job.attended === 'throughout' || work.length === 1;
    return [
      ...(doneMin === needMin
        ? []
        : [breach('work-complete', [job.id], Math.abs(needMin - doneMin), { needMin, doneMin })]),
      ...cut.map(({ startMin }) => breach('break-inside-specimen', [job.id], 0, { startMin })),
      ...(isFramed && isInOnePiece ? [] : [breach('stints-fill-booking', [job.id], 0)]),
    ];
  });
}
