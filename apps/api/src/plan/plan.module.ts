import { Module } from '@nestjs/common';
import { LandingController } from './landing.controller.js';
import { PlanController, TrialsController } from './plan.controller.js';
import { PlanService } from './plan.service.js';
import { TrialsService } from './trials.service.js';

@Module({ controllers: [PlanController, TrialsController, LandingController], providers: [PlanService, TrialsService] })
export class PlanModule {}
