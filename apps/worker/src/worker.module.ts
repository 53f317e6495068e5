import { Module } from '@nestjs/common';
import type { DynamicModule, Type } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { Clock } from '#libs/calendar/src/index.js';
import { LabRecords } from '#libs/records/src/index.js';
import type { WorkerConfig } from './config.js';
import { DeliverWebhookProcessor } from './deliver-webhook/deliver-webhook.processor.js';
import { IssueReportProcessor } from './issue-report/issue-report.processor.js';
import type { AnyProcessor } from './platform/task-processor.js';
import { WORKER_CONFIG } from './platform/worker-config.js';
import { ReadCurvesProcessor } from './read-curves/read-curves.processor.js';
import { RemindProcessor } from './remind/remind.processor.js';
import { PlanTrialProcessor } from './replan/plan-trial.processor.js';
import { ReplanProcessor } from './replan/replan.processor.js';
import { WhatWouldHelpProcessor } from './replan/what-would-help.processor.js';
import { WhereWouldItLandProcessor } from './replan/where-would-it-land.processor.js';
import { SendDigestProcessor } from './send-digest/send-digest.processor.js';
import { SendNoticeProcessor } from './send-notice/send-notice.processor.js';
import { SendNoticesProcessor } from './send-notices/send-notices.processor.js';
import { TidyProcessor } from './tidy/tidy.processor.js';

/** Every processor, by hand: what is not listed here does not work. */
export const PROCESSORS: Type<AnyProcessor>[] = [
  ReplanProcessor,
  PlanTrialProcessor,
  WhatWouldHelpProcessor,
  WhereWouldItLandProcessor,
  ReadCurvesProcessor,
  IssueReportProcessor,
  SendNoticesProcessor,
  SendNoticeProcessor,
  SendDigestProcessor,
  DeliverWebhookProcessor,
  RemindProcessor,
  TidyProcessor,
];

@Module({})
export class WorkerModule {
  static around(config: WorkerConfig, records: LabRecords): DynamicModule {
    const given = [
      { provide: LabRecords, useValue: records },
      { provide: DataSource, useValue: records.source },
      { provide: Clock, useValue: records.clock },
      { provide: WORKER_CONFIG, useValue: config },
    ];
    return { module: WorkerModule, providers: [...given, ...PROCESSORS] };
  }
}
