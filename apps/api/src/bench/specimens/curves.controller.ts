import type { CurveProposalView, JobView } from '#libs/contract/src/index.js';
import { Body, Controller, HttpCode, Param, Post, Query } from '@nestjs/common';
import { AnId } from '../../exchange/an-id.js';
import { FileNameDto } from '../../exchange/files.controller.js';
import { By } from '../../platform/by.js';
import { FileBody, TakesFile } from '../../platform/file-body.js';
import { May } from '../../platform/may.js';
import type { SignedIn } from '../../platform/signed-in.js';
import { CurveConfirmDto } from '../bench.dto.js';
import { CURVE_LIMIT_BYTES, CurvesService } from './curves.service.js';

@Controller('jobs/:id/specimens/:sid/curve')
export class CurvesController {
  constructor(private readonly curves: CurvesService) {}

  /** Keeps the raw body as the recorded curve of a specimen, and says how it is understood. */
  @Post()
  @HttpCode(200)
  @TakesFile(CURVE_LIMIT_BYTES, 'application/octet-stream')
  @May('edit-results')
  receive(
    @Param('id', AnId) id: string,
    @Param('sid', AnId) sid: string,
    @Query() { name }: FileNameDto,
    @FileBody() content: Buffer,
    @By() by: SignedIn,
  ): Promise<CurveProposalView> {
    return this.curves.receive(id, sid, { name, content }, by);
  }

  /** Confirms how the file is meant; files of the same source are read this way from now on. */
  @Post('confirm')
  @HttpCode(200)
  @May('edit-results')
  confirm(
    @Param('id', AnId) id: string,
    @Param('sid', AnId) sid: string,
    @Body() body: CurveConfirmDto,
    @By() by: SignedIn,
  ): Promise<JobView> {
    return this.curves.confirm(id, sid, body, by);
  }
}
