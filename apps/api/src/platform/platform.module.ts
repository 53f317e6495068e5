import { Global, Module } from '@nestjs/common';
import type { DynamicModule } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_INTERCEPTOR } from '@nestjs/core';
import { DataSource } from 'typeorm';
import { Clock } from '#libs/calendar/src/index.js';
import { Log } from '#libs/hosting/src/index.js';
import { LabRecords } from '#libs/records/src/index.js';
import type { ApiConfig } from '../config.js';
import { AccessGuard } from './access.guard.js';
import { API_CONFIG } from './api-config.js';
import { CurrentLab } from './current-lab.js';
import { FileBodyInterceptor } from './file-body.js';
import { HealthController } from './health.controller.js';
import { IdempotencyInterceptor } from './idempotency.interceptor.js';
import { LiveController } from './live.controller.js';
import { LiveFeed } from './live-feed.js';
import { ProblemFilter } from './problem.filter.js';
import { SessionsService } from './sessions.service.js';
import { SignInLimit } from './sign-in-limit.js';
import { TasksController } from './tasks.controller.js';
import { VersionInterceptor } from './version.interceptor.js';

/** What every feature stands on: who is signed in, what they may, how refusals are told, how changes are heard. */
@Global()
@Module({ controllers: [HealthController, LiveController, TasksController] })
export class PlatformModule {
  static around(config: ApiConfig, records: LabRecords, log: Log): DynamicModule {
    const given = [
      { provide: API_CONFIG, useValue: config },
      { provide: LabRecords, useValue: records },
      { provide: DataSource, useValue: records.source },
      { provide: Clock, useValue: records.clock },
      { provide: Log, useValue: log },
    ];
    const always = [
      { provide: APP_FILTER, useValue: new ProblemFilter(log) },
      { provide: APP_GUARD, useClass: AccessGuard },
      { provide: APP_INTERCEPTOR, useClass: FileBodyInterceptor }, // before the next, which asks what the body is
      { provide: APP_INTERCEPTOR, useClass: IdempotencyInterceptor },
      { provide: APP_INTERCEPTOR, useClass: VersionInterceptor },
    ];
    const own = [CurrentLab, SessionsService, SignInLimit, LiveFeed];
    const providers = [...given, ...always, ...own];
    return { module: PlatformModule, providers, exports: [API_CONFIG, LabRecords, DataSource, Clock, Log, ...own] };
  }
}
