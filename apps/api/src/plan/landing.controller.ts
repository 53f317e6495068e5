import { setTimeout as wait } from 'node:timers/promises';
import type { LandingView } from '#libs/contract/src/index.js';
import { LabError, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { announce, askOf, getTaskView, LabRecords, methodOf, MethodRepository } from '#libs/records/src/index.js';
import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { May } from '../platform/may.js';
import { batchProblems } from '../requests/check-batch.js';
import { LandingDto } from './landing.dto.js';
import type { LandingBatchDto } from './landing.dto.js';

/** So long is waited for the worker's answer before the page is asked to come again, ms. */
const PATIENCE_MS = 4_000;
const LOOK_MS = 25;

@Controller('matching')
export class LandingController {
  constructor(private readonly records: LabRecords) {}

  /** Where a request would land if it came now: which frame, when, and when it is done with 50 and 80 %. */
  @Post('landing')
  @HttpCode(200)
  @May('match')
  async landing(@Body() { batches, dueAt, specimensAt }: LandingDto): Promise<LandingView> {
    refuseIfAny(
      (await Promise.all(batches.map((batch, index) => this.problemsOf(batch, `batches[${index}].`)))).flat(),
    );
    const payload = {
      batches: batches.map(({ methodId, materialId, ask, specimenCount }) => ({
        methodId,
        materialId: materialId ?? null,
        ask,
        specimenCount,
      })),
      dueAt: dueAt ?? null,
      specimensAt: specimensAt ?? null,
    };
    const id = await this.records.quietly((manager) => announce(manager, 'where-would-it-land', payload));
    const until = performance.now() + PATIENCE_MS;
    while (performance.now() < until) {
      const task = await getTaskView(this.records.manager, id);
      if (task.state === 'done') return task.result as typeof task.result & LandingView;
      if (task.state === 'failed')
        throw new LabError('landing/impossible', task.error ?? 'It cannot be said where this request would land.');
      await wait(LOOK_MS);
    }
    throw new LabError('landing/unavailable', 'The planner is busy. Try again in a moment.');
  }

  private async problemsOf(
    { methodId, materialId, ask, specimenCount }: LandingBatchDto,
    path: string,
  ): Promise<FieldProblem[]> {
    const methods = new MethodRepository(this.records.manager);
    const method = await methods.get(methodId);
    const material = materialId ? await methods.getMaterial(materialId) : null;
    return batchProblems(methodOf(method), askOf({ ask, specimenCount }, method, material), ask, `${path}ask.`);
  }
}
