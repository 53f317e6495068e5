import { Module } from '@nestjs/common';
import { ExportController } from './export.controller.js';
import { FilesController } from './files.controller.js';

@Module({ controllers: [FilesController, ExportController] })
export class ExchangeModule {}
