import { Module } from '@nestjs/common';
import type { DynamicModule, Type } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { WorkerConfig } from './config.js';
import type { AnyProcessor } from './platform/task-processor.js';
import { TidyProcessor } from './tidy/tidy.processor.js';

/** Where a processor asks for the settings of the process it runs in. */
export const WORKER_CONFIG = Symbol('worker configuration');

/** Every processor, by hand: what is not listed here does not work. */
export const PROCESSORS: Type<AnyProcessor>[] = [TidyProcessor];

@Module({})
export class WorkerModule {
  static around(config: WorkerConfig, records: DataSource): DynamicModule {
    const given = [
      { provide: DataSource, useValue: records },
      { provide: WORKER_CONFIG, useValue: config },
    ];
    return { module: WorkerModule, providers: [...given, ...PROCESSORS] };
  }
}
