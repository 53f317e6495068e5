import { Module } from '@nestjs/common';
import { BenchController } from './bench.controller.js';
import { ChecksService } from './checks.service.js';
import { CurvesController } from './curves.controller.js';
import { CurvesService } from './curves.service.js';
import { JobActs } from './job-acts.js';
import { JobViews } from './job-views.js';
import { JobsController } from './jobs.controller.js';
import { RunService } from './run.service.js';
import { SetupService } from './setup.service.js';
import { SpecimensController } from './specimens.controller.js';
import { SpecimensService } from './specimens.service.js';
import { StopService } from './stop.service.js';
import { TakeService } from './take.service.js';

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
