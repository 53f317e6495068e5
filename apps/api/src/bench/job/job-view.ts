import { cautionsFor } from '#libs/bench/src/index.js';
import type { CautionItem } from '#libs/bench/src/index.js';
import { JOB_MOVES, resultWords, waysOut } from '#libs/contract/src/index.js';
import type { JobMove, JobView, ResultView } from '#libs/contract/src/index.js';
import type { Item } from '#libs/matching/src/index.js';
import type { ResultEntity } from '#libs/records/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import type { SignedIn } from '../../platform/signed-in.js';
import { missingOf } from '../../results/missing-of.js';
import type { BenchFacts } from './bench-facts.js';
import { checkViews } from './check-views.js';
import { itemView, setupView } from '../setup/setup-view.js';
import { dimensionsNeededOf } from '../specimens/dimensions-of.js';
import { resultsNeededOf } from '../specimens/typed-figures.js';

/** A job as the bench shows it to somebody. */
export function jobView(facts: BenchFacts, by: SignedIn): JobView {
  const { job, work, frame, trainItems, people } = facts;
  const { needs } = work;
  return {
    ...{
      id: job.id,
      reference: job.reference,
      state: job.state,
      why: job.why,
      version: job.version,
      moves: movesOf(facts, by),
    },
    ...headOf(facts),
    frame: frame && { id: frame.id, tag: frame.tag, name: frame.name },
    technician: job.technicianId === null ? null : { id: job.technicianId, name: people.get(job.technicianId) ?? '' },
    train: trainItems.map(({ role, item }) => itemView(role, item, needs)),
    setup: setupView(facts),
    checks: checkViews(facts),
    cautions: cautionsFor(
      needs,
      trainItems.map(({ item }) => cautionItem(item)),
      facts.fit.cautions,
    ),
    limitStops: limitStopsView(facts),
    speeds: needs.speeds.map(({ stage, speed }) => ({ label: STAGES[stage], valueMmMin: speed.value })),
    dimensionsNeeded: dimensionsNeededOf(work),
    resultsNeeded: resultsNeededOf(work),
    specimens: specimenViews(facts),
    plannedStartAt: instant(facts.booking?.startsAt),
    plannedEndAt: instant(facts.booking?.endsAt),
    takenAt: instant(job.takenAt),
    startedAt: instant(job.startedAt),
    finishedAt: instant(job.finishedAt),
    conditions: { ...job.conditions },
  };
}

function cautionItem(item: Item): CautionItem {
  const isPowered = item.kind === 'grip' && POWERED.includes(item.details.action);
  return { tag: item.tag, massKg: item.massKg, isPowered };
}

const POWERED: readonly string[] = ['pneumatic', 'hydraulic'];

const STAGES = {
  whole: 'Speed',
  modulus: 'Speed for the modulus',
  yield: 'Speed up to yield',
  'to-break': 'Speed to the break',
} as const;

function headOf({
  request,
  batch,
  method,
  material,
}: BenchFacts): Pick<JobView, 'request' | 'batch' | 'method' | 'material'> {
  return {
    request: { id: request.id, reference: request.reference, title: request.title, dueAt: instant(request.dueAt) },
    batch: {
      id: batch.id,
      position: batch.position,
      label: batch.label,
      specimenCount: batch.specimenCount,
      ask: batch.ask,
    },
    method: {
      id: method.id,
      code: method.code,
      designation: method.designation,
      title: method.title,
      testType: method.data.testType,
      data: { ...method.data },
    },
    material: material && { id: material.id, name: material.name },
  };
}

/** The ways out that are this person's: a technician's own job, a manager's any. */
function movesOf({ job, authorised }: BenchFacts, by: SignedIn): JobMove[] {
  return waysOut(JOB_MOVES, job.state).filter((move) => {
    const { by: whose } = JOB_MOVES[move];
    if (whose === 'manager') return by.permissions.has('abort-jobs');
    if (whose === 'system' || !by.permissions.has('run-jobs')) return false;
    return move === 'take' || (job.technicianId === by.id && (move !== 'start' || authorised));
  });
}

function limitStopsView({ fit: { limitStops: stops } }: BenchFacts): JobView['limitStops'] {
  return (
    stops && {
      upperMm: stops.upperStopMm,
      lowerMm: stops.lowerStopMm,
      sentence: `Opening between the coupling faces; the test starts at ${formatNumber(stops.startOpeningMm)} mm.`,
    }
  );
}

function specimenViews({ specimens, results, curves, readings, work }: BenchFacts): JobView['specimens'] {
  return specimens.map((row) => {
    const curve = curves.find(({ specimenId }) => specimenId === row.id);
    return {
      ...{
        id: row.id,
        label: row.label,
        position: row.position,
        fate: row.fate,
        invalidWhy: row.invalidWhy,
        condition: row.condition,
      },
      ...{ dimensions: row.dimensions, version: row.version },
      arrivedAt: instant(row.arrivedAt),
      conditioningFrom: instant(row.conditioningFrom),
      results: results
        .filter(({ specimenId }) => specimenId === row.id)
        .map((result) => resultView(result, work.method.testType)),
      curve: curve ? { id: curve.id, rows: curve.rows } : null,
      reading: readings.get(row.id) ?? null,
      missing: missingOf({ work, results }, row),
    };
  });
}

function resultView({ key, value, revision, origin, basis }: ResultEntity, testType: string): ResultView {
  const { label, unit, factor } = resultWords(key, testType);
  return { key, label, value: value * factor, unit, revision, origin, basis: { ...basis }, flags: basis.flags ?? [] };
}

function instant(at: Date | null | undefined): string | null {
  return at?.toISOString() ?? null;
}
