import { Module } from '@nestjs/common';
import type { DynamicModule, Type } from '@nestjs/common';
import type { DataSource } from 'typeorm';
import type { Log } from '#libs/hosting/src/index.js';
import type { ApiConfig } from './config.js';
import { PeopleModule } from './people/people.module.js';
import { PlatformModule } from './platform/platform.module.js';

/** Every feature, by hand: what is not listed here is not served. */
const FEATURES: Type[] = [PeopleModule];

@Module({})
export class AppModule {
  static around(config: ApiConfig, records: DataSource, log: Log): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.around(config, records, log), ...FEATURES] };
  }
}
