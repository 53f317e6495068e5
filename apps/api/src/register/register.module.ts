import { Module } from '@nestjs/common';
import { ItemsExchangeController } from './items-exchange.controller.js';
import { ItemsExchangeService } from './items-exchange.service.js';
import { ItemsController } from './items.controller.js';
import { ItemsService } from './items.service.js';
import { RigsService } from './rigs.service.js';
import { TroubleService } from './trouble.service.js';

@Module({
  controllers: [ItemsExchangeController, ItemsController],
  providers: [ItemsExchangeService, ItemsService, RigsService, TroubleService],
})
export class RegisterModule {}
