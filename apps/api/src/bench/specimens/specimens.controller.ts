import type { JobView } from '#libs/contract/src/index.js';
import { Body, Controller, HttpCode, Param, Post, Put } from '@nestjs/common';
import { AnId } from '../../exchange/an-id.js';
import { By } from '../../platform/by.js';
import { May } from '../../platform/may.js';
import type { SignedIn } from '../../platform/signed-in.js';
import { DimensionsDto, InvalidDto, TypedResultsDto } from '../bench.dto.js';
import { SpecimensService } from './specimens.service.js';

@Controller('jobs/:id/specimens/:sid')
export class SpecimensController {
  constructor(private readonly specimens: SpecimensService) {}

  @Put('dimensions')
  @May('edit-results')
  measure(
    @Param('id', AnId) id: string,
    @Param('sid', AnId) sid: string,
    @Body() { dimensions }: DimensionsDto,
    @By() by: SignedIn,
  ): Promise<JobView> {
    return this.specimens.measure(id, sid, dimensions, by);
  }

  @Post('results')
  @HttpCode(200)
  @May('edit-results')
  type(
    @Param('id', AnId) id: string,
    @Param('sid', AnId) sid: string,
    @Body() body: TypedResultsDto,
    @By() by: SignedIn,
  ): Promise<JobView> {
    return this.specimens.type(id, sid, body, by);
  }

  /** Marks a specimen as invalid, as not tested, or as valid after all, with the reason. */
  @Post('invalid')
  @HttpCode(200)
  @May('edit-results')
  mark(
    @Param('id', AnId) id: string,
    @Param('sid', AnId) sid: string,
    @Body() body: InvalidDto,
    @By() by: SignedIn,
  ): Promise<JobView> {
    return this.specimens.mark(id, sid, body, by);
  }
}
