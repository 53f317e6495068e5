import type { BatchResults, CurveView, HistoryView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import {
  HistoryRepository,
  methodOf,
  RequestRepository,
  resultsOfRequest,
  ResultRepository,
} from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import { teamsSeen } from '../requests/team-access.js';
import { curveView } from './curve-view.js';
import { foundResults } from './found-results.js';
import { historyView } from './history-view.js';
import type { HistoryDto } from './results.dto.js';

const MOST_POINTS = 200;

/** What was found: per request, per curve, and over time. */
@Injectable()
export class ResultsService {
  constructor(private readonly records: DataSource) {}

  /** Batch by batch; only of requests that the person may see. */
  async ofRequest(requestId: string, by: SignedIn): Promise<BatchResults[]> {
    const { manager } = this.records;
    const request = await new RequestRepository(manager).get(requestId, teamsSeen(by));
    return (await resultsOfRequest(manager, request.id)).map((found) => foundResults(found, request));
  }

  /** @throws LabError `curve/unknown`, also for a curve of a request that may not be seen */
  async curve(curveId: string, by: SignedIn): Promise<CurveView> {
    const { manager } = this.records;
    const requestId = await new ResultRepository(manager).requestOfCurve(curveId);
    const request = requestId === null ? null : await new RequestRepository(manager).findSeen(requestId, teamsSeen(by));
    for (const found of request ? await resultsOfRequest(manager, request.id) : []) {
      const curve = found.curves.find(({ id }) => id === curveId);
      const specimen = found.specimens.find(({ id }) => id === curve?.specimenId);
      if (curve && specimen)
        return curveView(curve, {
          specimenLabel: specimen.label,
          method: methodOf(found.method),
          results: found.results,
        });
    }
    throw new LabError('curve/unknown', 'There is no such curve, or a newer one has taken its place.', { curveId });
  }

  async history({ method, material, key, cell }: HistoryDto): Promise<HistoryView> {
    const asked = {
      methodCode: method,
      materialCode: material ?? null,
      key,
      cellTag: cell ?? null,
      limit: MOST_POINTS,
    };
    return historyView(method, key, await new HistoryRepository(this.records.manager).find(asked));
  }
}
