import type { DueLine, EvaluationView, ImpactView, NonconformityView } from '#libs/contract/src/index.js';
import { Body, Controller, Get, HttpCode, Param, Patch, Post, Query } from '@nestjs/common';
import { AnId } from '../exchange/an-id.js';
import { By } from '../platform/by.js';
import { IfMatch } from '../platform/if-match.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import {
  DecideNonconformityDto,
  DueDto,
  EvaluateDto,
  OpenNonconformityDto,
  RecordCalibrationDto,
  SinceDto,
} from './calibration.dto.js';
import { CalibrationService } from './calibration.service.js';
import type { EnteredCalibration } from './calibration.service.js';
import { evaluate } from './evaluate.js';
import { ImpactService } from './impact.service.js';
import { NonconformitiesService } from './nonconformities.service.js';

const DUE_DAYS = 90;

@Controller()
export class CalibrationController {
  constructor(
    private readonly calibrations: CalibrationService,
    private readonly impacts: ImpactService,
    private readonly nonconformities: NonconformitiesService,
  ) {}

  /** Enters a calibration. One that found the item out of tolerance answers with what it touched. */
  @Post('items/:id/calibrations')
  @May('record-calibration')
  enter(
    @Param('id', AnId) id: string,
    @Body() body: RecordCalibrationDto,
    @By() by: SignedIn,
  ): Promise<EnteredCalibration> {
    return this.calibrations.enter(id, body, by);
  }

  /** Class and range from readings, with the figures of each step; nothing is kept. */
  @Post('calibrations/evaluate')
  @HttpCode(200)
  @May('record-calibration')
  evaluate(@Body() body: EvaluateDto): EvaluationView {
    return evaluate(body);
  }

  /** What is overdue or falls due within so many days (90), and the planned jobs that it would stop. */
  @Get('calibration/due')
  @May('see-items')
  due(@Query() { days }: DueDto): Promise<DueLine[]> {
    return this.calibrations.due(days === undefined ? DUE_DAYS : Number(days));
  }

  /** Jobs, reports and people that an item has touched since it was last found good. */
  @Get('items/:id/impact')
  @May('see-items')
  impact(@Param('id', AnId) id: string, @Query() { since }: SinceDto): Promise<ImpactView> {
    return this.impacts.of(id, since);
  }

  @Post('items/:id/nonconformity')
  @May('edit-nonconformities')
  open(
    @Param('id', AnId) id: string,
    @Body() body: OpenNonconformityDto,
    @By() by: SignedIn,
  ): Promise<NonconformityView> {
    return this.nonconformities.open(id, body, by);
  }

  @Get('nonconformities')
  @May('see-nonconformities')
  list(): Promise<NonconformityView[]> {
    return this.nonconformities.list();
  }

  @Patch('nonconformities/:id')
  @May('edit-nonconformities')
  decide(
    @Param('id', AnId) id: string,
    @IfMatch() version: number,
    @Body() body: DecideNonconformityDto,
    @By() by: SignedIn,
  ): Promise<NonconformityView> {
    return this.nonconformities.decide(id, version, body, by);
  }
}
