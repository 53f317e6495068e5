import { Module } from '@nestjs/common';
import { RecordController } from './record.controller.js';

@Module({ controllers: [RecordController] })
export class RecordModule {}
