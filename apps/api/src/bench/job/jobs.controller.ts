import type { JobView } from '#libs/contract/src/index.js';
import { Body, Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { AnId } from '../../exchange/an-id.js';
import { By } from '../../platform/by.js';
import { May } from '../../platform/may.js';
import type { SignedIn } from '../../platform/signed-in.js';
import { BlockDto, ConfirmDto, FinishDto, ShiftCheckDto, StandInDto, TickDto, WhyDto } from '../bench.dto.js';
import { ChecksService } from '../run/checks.service.js';
import { JobViews } from './job-views.js';
import { RunService } from '../run/run.service.js';
import { SetupService } from '../setup/setup.service.js';
import { StopService } from '../run/stop.service.js';

/** A job at the frame. Every act answers with the job as it stands then. */
@Controller('jobs')
export class JobsController {
  constructor(
    private readonly views: JobViews,
    private readonly setup: SetupService,
    private readonly checks: ChecksService,
    private readonly running: RunService,
    private readonly stopping: StopService,
  ) {}

  @Get(':id')
  @May('see-jobs')
  view(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<JobView> {
    return this.views.view(id, by, by);
  }

  /** Confirms by its tag what came off, stays or went on. */
  @Post(':id/confirm')
  @HttpCode(200)
  @May('run-jobs')
  confirm(@Param('id', AnId) id: string, @Body() { tag }: ConfirmDto, @By() by: SignedIn): Promise<JobView> {
    return this.setup.confirm(id, tag, by);
  }

  /** An equal unit takes the place of one of the train. */
  @Post(':id/stand-in')
  @HttpCode(200)
  @May('run-jobs')
  standIn(@Param('id', AnId) id: string, @Body() { itemId, tag }: StandInDto, @By() by: SignedIn): Promise<JobView> {
    return this.setup.standIn(id, itemId, tag, by);
  }

  /** Holds the cell against a known load; a cell that fails is out of use at once. */
  @Post(':id/shift-check')
  @HttpCode(200)
  @May('run-jobs')
  shiftCheck(@Param('id', AnId) id: string, @Body() body: ShiftCheckDto, @By() by: SignedIn): Promise<JobView> {
    return this.checks.shiftCheck(id, body, by);
  }

  @Post(':id/tick')
  @HttpCode(200)
  @May('run-jobs')
  tick(@Param('id', AnId) id: string, @Body() body: TickDto, @By() by: SignedIn): Promise<JobView> {
    return this.checks.tick(id, body, by);
  }

  /** Starts the run, when no interlock is in the way. */
  @Post(':id/start')
  @HttpCode(200)
  @May('run-jobs')
  start(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<JobView> {
    return this.running.start(id, by);
  }

  @Post(':id/pause')
  @HttpCode(200)
  @May('run-jobs')
  pause(@Param('id', AnId) id: string, @Body() { why }: WhyDto, @By() by: SignedIn): Promise<JobView> {
    return this.running.pause(id, why, by);
  }

  @Post(':id/resume')
  @HttpCode(200)
  @May('run-jobs')
  resume(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<JobView> {
    return this.running.resume(id, by);
  }

  @Post(':id/finish')
  @HttpCode(200)
  @May('run-jobs')
  finish(@Param('id', AnId) id: string, @Body() body: FinishDto, @By() by: SignedIn): Promise<JobView> {
    return this.running.finish(id, body, by);
  }

  @Post(':id/block')
  @HttpCode(200)
  @May('run-jobs')
  block(@Param('id', AnId) id: string, @Body() body: BlockDto, @By() by: SignedIn): Promise<JobView> {
    return this.stopping.block(id, body, by);
  }

  @Post(':id/give-back')
  @HttpCode(200)
  @May('run-jobs')
  giveBack(@Param('id', AnId) id: string, @Body() { why }: WhyDto, @By() by: SignedIn): Promise<JobView> {
    return this.stopping.giveBack(id, why, by);
  }

  /** Lets a blocked job be planned and taken again. */
  @Post(':id/unblock')
  @HttpCode(200)
  @May('abort-jobs')
  unblock(@Param('id', AnId) id: string, @Body() { why }: WhyDto, @By() by: SignedIn): Promise<JobView> {
    return this.stopping.unblock(id, why, by);
  }

  @Post(':id/abort')
  @HttpCode(200)
  @May('abort-jobs')
  abort(@Param('id', AnId) id: string, @Body() { why }: WhyDto, @By() by: SignedIn): Promise<JobView> {
    return this.stopping.abort(id, why, by);
  }
}
