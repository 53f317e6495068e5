import { Module } from '@nestjs/common';
import { CalibrationController } from './calibration.controller.js';
import { CalibrationService } from './calibration.service.js';
import { ImpactService } from './impact.service.js';
import { NonconformitiesService } from './nonconformities.service.js';

@Module({
  controllers: [CalibrationController],
  providers: [CalibrationService, ImpactService, NonconformitiesService],
})
export class CalibrationModule {}
