import { Module } from '@nestjs/common';
import { BenchController } from './taking/bench.controller.js';
import { ChecksService } from './run/checks.service.js';
import { CurvesController } from './specimens/curves.controller.js';
import { CurvesService } from './specimens/curves.service.js';
import { JobActs } from './job/job-acts.js';
import { JobViews } from './job/job-views.js';
import { JobsController } from './job/jobs.controller.js';
import { RunService } from './run/run.service.js';
import { SetupService } from './setup/setup.service.js';
import { SpecimensController } from './specimens/specimens.controller.js';
import { SpecimensService } from './specimens/specimens.service.js';
import { StopService } from './run/stop.service.js';
import { TakeService } from './taking/take.service.js';

@Module({
  controllers: [BenchController, CurvesController, JobsController, SpecimensController],
  providers: [
    ChecksService,
    CurvesService,
    JobActs,
    JobViews,
    RunService,
    SetupService,
    SpecimensService,
    StopService,
    TakeService,
  ],
})
export class BenchModule {}
