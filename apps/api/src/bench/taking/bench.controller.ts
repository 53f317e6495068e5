import type { BenchView, JobView } from '#libs/contract/src/index.js';
import { Body, Controller, Get, HttpCode, Post } from '@nestjs/common';
import { By } from '../../platform/by.js';
import { May } from '../../platform/may.js';
import type { SignedIn } from '../../platform/signed-in.js';
import { TakeDto } from '../bench.dto.js';
import { TakeService } from './take.service.js';

@Controller('bench')
export class BenchController {
  constructor(private readonly taking: TakeService) {}

  /** What is mine, what comes next, and what runs today. */
  @Get()
  @May('see-jobs')
  bench(@By() by: SignedIn): Promise<BenchView> {
    return this.taking.bench(by);
  }

  /** Takes the next job of the plan that the person may run and whose train is free. */
  @Post('take')
  @HttpCode(200)
  @May('run-jobs')
  take(@Body() { frameId }: TakeDto, @By() by: SignedIn): Promise<JobView> {
    return this.taking.take(frameId, by);
  }
}
