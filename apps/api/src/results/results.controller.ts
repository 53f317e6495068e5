import type { BatchResults, CurveView, HistoryView } from '#libs/contract/src/index.js';
import { Controller, Get, Param, Query } from '@nestjs/common';
import { AnId } from '../exchange/an-id.js';
import { By } from '../platform/by.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { HistoryDto } from './results.dto.js';
import { ResultsService } from './results.service.js';

@Controller()
export class ResultsController {
  constructor(private readonly results: ResultsService) {}

  /** Every figure with its statistics, batch by batch. */
  @Get('requests/:id/results')
  @May('see-results')
  ofRequest(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<BatchResults[]> {
    return this.results.ofRequest(id, by);
  }

  /** A recorded curve, thinned to be drawn, with the points that its results rest on. */
  @Get('curves/:id')
  @May('see-results')
  curve(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<CurveView> {
    return this.results.curve(id, by);
  }

  /** The same result over time, with a chart of individuals and moving ranges. Across teams: for people of the lab. */
  @Get('results/history')
  @May('see-history')
  history(@Query() asked: HistoryDto): Promise<HistoryView> {
    return this.results.history(asked);
  }
}
