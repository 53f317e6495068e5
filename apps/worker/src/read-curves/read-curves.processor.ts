import { LabError } from '#libs/errors/src/index.js';
import type { Ask, Geometry, LoadCellDetails, Method } from '#libs/matching/src/index.js';
import {
  askOf,
  ItemRepository,
  readJobAtBench,
  storeCurve,
  LabRecords,
  methodOf,
  ResultRepository,
  sourceFingerprint,
  StoredFileRepository,
} from '#libs/records/src/index.js';
import type { ItemEntity, SpecimenEntity, StoredFileEntity } from '#libs/records/src/index.js';
import { HEAD_BYTES, proposeFormat, reduceCurve } from '#libs/reduction/src/index.js';
import type { Curve, CurveFormat, ReductionOutcome } from '#libs/reduction/src/index.js';
import type { TaskContext, TaskPayload } from '#libs/tasks/src/index.js';
import { Injectable } from '@nestjs/common';
import type { TaskProcessor } from '../platform/task-processor.js';
import { curveResults } from './curve-results.js';
import type { CellRating } from './curve-results.js';
import { drawnCurve } from './drawn-curve.js';
import { readCurveFile } from './read-file.js';
import { dimensionsOf, measuredGeometry, nominalSizes, recipeOf } from './recipe-of.js';

interface Asked {
  method: Method;
  ask: Ask;
  specimen: SpecimenEntity;
  cell: CellRating | null;
}

/**
 * From a kept curve file to results of its specimen, all or nothing: a file that is refused leaves no trace but itself and the
 * reason. Safe to run twice: the same file gives the same curve and the same figures, which are kept once.
 */
@Injectable()
export class ReadCurvesProcessor implements TaskProcessor<'read-curves'> {
  readonly handles = 'read-curves';

  constructor(private readonly records: LabRecords) {}

  async run(
    { fileId, jobId, specimenId, byId }: TaskPayload<'read-curves'>,
    context: TaskContext,
  ): Promise<Record<string, unknown>> {
    const { manager } = this.records;
    const file = await new StoredFileRepository(manager).get(fileId);
    const asked = await this.asked(jobId, specimenId);
    const format = await this.formatOf(file);
    const { curve } = await readCurveFile(file.name, file.content, format, (share) =>
      context.progress(READ_PCT * share, `Reads ${file.name}`),
    );
    const geometry = measuredGeometry(asked.ask, asked.specimen.dimensions);
    const outcome = reduced(file.name, curve, asked, geometry);
    const nominal = nominalSizes(asked.ask, asked.specimen.dimensions);
    const results = curveResults(outcome, curve, asked.method, geometry, asked.cell, nominal);
    const drawn = drawnCurve(
      curve,
      outcome.results.flatMap(({ points }) => points.map(({ index }) => index)),
    );
    await this.records.act(byId, (act) =>
      storeCurve(act, {
        fileId,
        jobId,
        specimenId,
        byId,
        sha256: file.sha256,
        format,
        rows: curve.pointCount,
        drawn,
        results,
      }),
    );
    return { specimenId, rows: curve.pointCount, results: results.length };
  }

  private async asked(jobId: string, specimenId: string): Promise<Asked> {
    const { manager } = this.records;
    const { job, batch, method, material, specimens } = await readJobAtBench(manager, jobId, this.records.clock.now());
    const specimen = specimens.find(({ id }) => id === specimenId);
    if (!specimen) throw new LabError('specimen/unknown', 'There is no such specimen in this job.', { specimenId });
    const cellId = job.train.find(({ role }) => role === 'load-cell')?.itemId;
    const [cell] = await new ItemRepository(manager).findByIds(cellId === undefined ? [] : [cellId]);
    return {
      method: methodOf(method),
      ask: askOf(batch, method, material),
      specimen,
      cell: cell ? ratingOf(cell) : null,
    };
  }

  /** As a person confirmed it for this source. */
  private async formatOf({ content, name }: StoredFileEntity): Promise<CurveFormat> {
    const proposal = proposeFormat(content.subarray(0, HEAD_BYTES), content.length <= HEAD_BYTES);
    const source =
      proposal && (await new ResultRepository(this.records.manager).findSource(sourceFingerprint(proposal.format)));
    if (source) return source.format;
    throw new LabError(
      'curve/format-unconfirmed',
      `Nobody has confirmed how files like ${name} are meant. Upload it again and confirm its columns.`,
    );
  }
}

/** A cell senses force, or torque only. */
function ratingOf({ tag, details }: ItemEntity): CellRating {
  const { capacityN, torqueCapacityNm } = details as LoadCellDetails;
  return capacityN > 0 ? { tag, capacity: capacityN, unit: 'N' } : { tag, capacity: torqueCapacityNm, unit: 'N·m' };
}

/** Reading is most of the work. */
const READ_PCT = 80;

/** @throws LabError `curve/not-reduced` for a curve from which nothing can be had */
function reduced(
  name: string,
  curve: Curve,
  { method, ask }: Asked,
  geometry: Geometry,
): Extract<ReductionOutcome, { state: 'reduced' }> {
  const outcome = reduceCurve(curve, recipeOf(method, ask), dimensionsOf(method, geometry));
  if (outcome.state === 'reduced') return outcome;
  const reasons = outcome.reasons.map(({ reason, what }) => `${reason.replaceAll('-', ' ')} (${what})`).join('; ');
  throw new LabError('curve/not-reduced', `Nothing could be had from ${name}: ${reasons}.`, {
    reasons: outcome.reasons,
  });
}
