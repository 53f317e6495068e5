import { Module } from '@nestjs/common';
import { ArrivalsService } from './arrivals.service.js';
import { LabMatchingService } from './lab-matching.service.js';
import { MatchingController } from './matching.controller.js';
import { RequestMovesService } from './request-moves.service.js';
import { RequestsExchangeController } from './requests-exchange.controller.js';
import { RequestsExchangeService } from './requests-exchange.service.js';
import { RequestsController } from './requests.controller.js';
import { RequestsService } from './requests.service.js';

@Module({
  controllers: [MatchingController, RequestsExchangeController, RequestsController],
  providers: [ArrivalsService, LabMatchingService, RequestMovesService, RequestsExchangeService, RequestsService],
  exports: [LabMatchingService],
})
export class RequestsModule {}
