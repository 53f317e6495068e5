import type { FitView, PlanView, TaskView, TrialView, WhyView } from '#libs/contract/src/index.js';
import {
  Body,
  Controller,
  Delete,
  Get,
  HttpCode,
  Param,
  ParseIntPipe,
  ParseUUIDPipe,
  Post,
  Query,
} from '@nestjs/common';
import { By } from '../platform/by.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { FitQueryDto, HoldDto, NewTrialDto, PinDto, TrialEditDto } from './plan.dto.js';
import { PlanService } from './plan.service.js';
import { trialEditOf } from './trial-edit.js';
import { TrialsService } from './trials.service.js';

@Controller('plan')
export class PlanController {
  constructor(private readonly plan: PlanService) {}

  /** The published plan, lane by lane, with late work and its causes. */
  @Get()
  @May('see-plan')
  view(@By() by: SignedIn): Promise<PlanView> {
    return this.plan.view(by);
  }

  /** Asks for a new plan; the answer says under which task. */
  @Post('replan')
  @HttpCode(202)
  @May('edit-plan')
  replan(@By() by: SignedIn): Promise<TaskView> {
    return this.plan.replan(by);
  }

  /** Ranks single changes by the lateness that they would remove; the answer says under which task. */
  @Post('help')
  @HttpCode(202)
  @May('edit-plan')
  help(@By() by: SignedIn): Promise<TaskView> {
    return this.plan.help(by);
  }

  @Get('fit')
  @May('see-plan')
  fit(@Query() { jobId, startsAt, trialId }: FitQueryDto): Promise<FitView[]> {
    return this.plan.fit(jobId, startsAt, trialId);
  }

  @Get('jobs/:id/why')
  @May('see-plan')
  why(@Param('id', ParseUUIDPipe) id: string): Promise<WhyView> {
    return this.plan.why(id);
  }

  @Post('pins')
  @HttpCode(204)
  @May('edit-plan')
  pin(@Body() { jobId, frameId, startsAt }: PinDto, @By() by: SignedIn): Promise<void> {
    return this.plan.pin(jobId, frameId, startsAt ?? null, by);
  }

  @Delete('pins/:jobId')
  @HttpCode(204)
  @May('edit-plan')
  unpin(@Param('jobId', ParseUUIDPipe) jobId: string, @By() by: SignedIn): Promise<void> {
    return this.plan.unpin(jobId, by);
  }

  @Post('holds')
  @HttpCode(204)
  @May('edit-plan')
  hold(@Body() { jobId, why }: HoldDto, @By() by: SignedIn): Promise<void> {
    return this.plan.hold(jobId, why, by);
  }

  @Delete('holds/:jobId')
  @HttpCode(204)
  @May('edit-plan')
  unhold(@Param('jobId', ParseUUIDPipe) jobId: string, @By() by: SignedIn): Promise<void> {
    return this.plan.unhold(jobId, by);
  }
}

@Controller('trials')
export class TrialsController {
  constructor(private readonly trials: TrialsService) {}

  @Get()
  @May('see-plan')
  list(): Promise<TrialView[]> {
    return this.trials.list();
  }

  /** Begins a trial plan as a copy of the published one. */
  @Post()
  @May('edit-plan')
  begin(@Body() { name }: NewTrialDto, @By() by: SignedIn): Promise<TrialView> {
    return this.trials.begin(name ?? 'Trial', by);
  }

  @Get(':id')
  @May('see-plan')
  view(@Param('id', ParseUUIDPipe) id: string): Promise<TrialView> {
    return this.trials.view(id);
  }

  @Delete(':id')
  @HttpCode(204)
  @May('edit-plan')
  drop(@Param('id', ParseUUIDPipe) id: string): Promise<void> {
    return this.trials.drop(id);
  }

  /** Adds a change; refused with every reason when it cannot be tried. The plan follows: watch the trial. */
  @Post(':id/edits')
  @May('edit-plan')
  edit(@Param('id', ParseUUIDPipe) id: string, @Body() body: TrialEditDto): Promise<TrialView> {
    return this.trials.addEdit(id, trialEditOf(body));
  }

  @Delete(':id/edits/:index')
  @May('edit-plan')
  unedit(@Param('id', ParseUUIDPipe) id: string, @Param('index', ParseIntPipe) index: number): Promise<TrialView> {
    return this.trials.removeEdit(id, index);
  }

  /** Plans a trial anew when the lab has changed since; its changes stay. */
  @Post(':id/replan')
  @HttpCode(202)
  @May('edit-plan')
  replan(@Param('id', ParseUUIDPipe) id: string): Promise<TrialView> {
    return this.trials.replan(id);
  }

  @Post(':id/publish')
  @HttpCode(200)
  @May('edit-plan')
  publish(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<TrialView> {
    return this.trials.publish(id, by);
  }
}
