import { Module } from '@nestjs/common';
import type { DynamicModule, Type } from '@nestjs/common';
import type { Log } from '#libs/hosting/src/index.js';
import type { LabRecords } from '#libs/records/src/index.js';
import { BenchModule } from './bench/bench.module.js';
import { CalibrationModule } from './calibration/calibration.module.js';
import type { ApiConfig } from './config.js';
import { ExchangeModule } from './exchange/exchange.module.js';
import { FeedsModule } from './feeds/feeds.module.js';
import { MethodsModule } from './methods/methods.module.js';
import { NoticesModule } from './notices/notices.module.js';
import { PeopleModule } from './people/people.module.js';
import { PlanModule } from './plan/plan.module.js';
import { PlatformModule } from './platform/platform.module.js';
import { RecordModule } from './record/record.module.js';
import { RegisterModule } from './register/register.module.js';
import { ReportsModule } from './reports/reports.module.js';
import { ResultsModule } from './results/results.module.js';
import { RequestsModule } from './requests/requests.module.js';
import { WebhooksModule } from './webhooks/webhooks.module.js';

/** Every feature, by hand: what is not listed here is not served. */
const FEATURES: Type[] = [
  PeopleModule,
  PlanModule,
  RegisterModule,
  CalibrationModule,
  MethodsModule,
  RequestsModule,
  BenchModule,
  ResultsModule,
  ReportsModule,
  RecordModule,
  ExchangeModule,
  NoticesModule,
  FeedsModule,
  WebhooksModule,
];

@Module({})
export class AppModule {
  static around(config: ApiConfig, records: LabRecords, log: Log): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.around(config, records, log), ...FEATURES] };
  }
}
