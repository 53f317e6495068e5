import type { PreviewView } from '#libs/contract/src/index.js';
import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { By } from '../platform/by.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { LabMatchingService } from './lab-matching.service.js';
import { PreviewDto } from './request.dto.js';

@Controller('matching')
export class MatchingController {
  constructor(private readonly matching: LabMatchingService) {}

  /** Which load trains could run a batch, why the others not, and what would help; nothing is kept. */
  @Post('preview')
  @HttpCode(200)
  @May('match')
  preview(@Body() body: PreviewDto, @By() by: SignedIn): Promise<PreviewView> {
    return this.matching.preview(body, by);
  }
}
