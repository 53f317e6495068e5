import type { SpecimenEntity } from '#libs/records/src/index.js';
import { idOf } from '../northmoor/ids.js';
import { TRAINS } from '../northmoor/trains.js';
import { DRIFTING_CELL } from '../northmoor/trouble.js';
import type { WorkOf } from './work-of.js';
import { recordedPiece } from './curve-rows.js';
import type { RequestRows } from './demo-rows.js';
import { personId } from './load-people.js';
import { measured } from './measured.js';

/** What became of one piece. */
export type PieceOutcome = { specimen: Partial<SpecimenEntity> } & Pick<RequestRows, 'results' | 'curves' | 'files'>;

/** A piece that was tested: its dimensions and results, and its curve where the frame recorded one. */
export function testedPiece(work: WorkOf, piece: Partial<SpecimenEntity>, position: number): PieceOutcome {
  const { demo, job, reference, batch, method, times } = work;
  const found = measured(job.product, reference, position, driftOf(work), job.outlier);
  const invalid = demo.invalid?.piece === position ? demo.invalid.why : null;
  const at = new Date((times.startedAt ?? times.takenAt).getTime() + position * times.perSpecimenMin * 60_000);
  const by = { specimenId: piece.id!, jobId: idOf('job', reference) };
  const byId = personId(job.technician);
  const recorded = job.recorded ? recordedPiece(batch, method, { ...by, label: piece.label!, byId, at, found }) : null;
  const typed = found.results
    .filter(({ key }) => batch.ask.results.includes(key))
    .map((result) => ({ ...result, basis: {} }));
  const origin = recorded ? ('reduced' as const) : ('typed' as const);
  return {
    specimen: {
      ...piece,
      dimensions: found.dimensions,
      fate: invalid ? ('invalid' as const) : ('tested' as const),
      invalidWhy: invalid,
    },
    results: (recorded?.results ?? typed).map((result) => ({
      ...result,
      ...by,
      ...{ id: idOf('result', `${reference}/${position}/${result.key}`), revision: 1, origin, why: null },
      ...{ enteredBy: byId, enteredAt: at },
    })),
    curves: recorded ? [recorded.curve] : [],
    files: recorded ? [recorded.file] : [],
  };
}

/** What the cell of this job read too high, as a fraction. */
export function driftOf({ demo, job }: WorkOf): number {
  return TRAINS[job.train].links.some(({ tag }) => tag === DRIFTING_CELL) ? demo.drift : 0;
}
