import { Module } from '@nestjs/common';
import { PlanController, TrialsController } from './plan.controller.js';
import { PlanService } from './plan.service.js';
import { TrialsService } from './trials.service.js';

@Module({ controllers: [PlanController, TrialsController], providers: [PlanService, TrialsService] })
export class PlanModule {}
