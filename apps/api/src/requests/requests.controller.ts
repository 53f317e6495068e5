import type { Page, RequestLine, RequestView } from '#libs/contract/src/index.js';
import { Body, Controller, Get, HttpCode, Param, Patch, Post, Query } from '@nestjs/common';
import { By } from '../platform/by.js';
import { AnId } from '../exchange/an-id.js';
import { IfMatch } from '../platform/if-match.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { ArrivalsService } from './arrivals.service.js';
import { RequestMovesService } from './request-moves.service.js';
import { RequestsService } from './requests.service.js';
import {
  ArrivalDto,
  ListRequestsDto,
  MessageDto,
  PerhapsReasonDto,
  ReasonDto,
  ReviewDto,
  SaveRequestDto,
} from './request.dto.js';

@Controller('requests')
export class RequestsController {
  constructor(
    private readonly requests: RequestsService,
    private readonly moves: RequestMovesService,
    private readonly arrivals: ArrivalsService,
  ) {}

  /** Requests that the person may see, newest first. */
  @Get()
  @May('see-requests')
  list(@Query() asked: ListRequestsDto, @By() by: SignedIn): Promise<Page<RequestLine>> {
    return this.requests.list(asked, by);
  }

  @Get(':id')
  @May('see-requests')
  view(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<RequestView> {
    return this.requests.view(id, by);
  }

  /** Keeps a draft. The lab does not see to it before it is submitted. */
  @Post()
  @May('submit-request')
  async draft(@Body() body: SaveRequestDto, @By() by: SignedIn): Promise<RequestView> {
    return this.requests.view(await this.requests.draft(body, by), by);
  }

  @Patch(':id')
  @May('submit-request')
  async save(
    @Param('id', AnId) id: string,
    @IfMatch() version: number,
    @Body() body: SaveRequestDto,
    @By() by: SignedIn,
  ): Promise<RequestView> {
    await this.requests.save(id, version, body, by);
    return this.requests.view(id, by);
  }

  @Post(':id/submit')
  @HttpCode(200)
  @May('submit-request')
  submit(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.moves.submit(id, by));
  }

  @Post(':id/withdraw')
  @HttpCode(200)
  @May('submit-request')
  withdraw(@Param('id', AnId) id: string, @Body() body: PerhapsReasonDto, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.moves.withdraw(id, body.why ?? '', by));
  }

  /** A new draft that asks for the same. */
  @Post(':id/copy')
  @May('submit-request')
  async copy(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<RequestView> {
    return this.requests.view(await this.requests.copy(id, by), by);
  }

  @Post(':id/messages')
  @HttpCode(200)
  @May('write-message')
  say(@Param('id', AnId) id: string, @Body() { body }: MessageDto, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.requests.say(id, body, by));
  }

  @Post(':id/return')
  @HttpCode(200)
  @May('review-request')
  return(@Param('id', AnId) id: string, @Body() { why }: ReasonDto, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.moves.return(id, why, by));
  }

  @Post(':id/decline')
  @HttpCode(200)
  @May('review-request')
  decline(@Param('id', AnId) id: string, @Body() { why }: ReasonDto, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.moves.decline(id, why, by));
  }

  @Post(':id/accept')
  @HttpCode(200)
  @May('review-request')
  accept(@Param('id', AnId) id: string, @Body() body: ReviewDto, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.moves.accept(id, body, by));
  }

  @Post(':id/reopen')
  @HttpCode(200)
  @May('review-request')
  reopen(@Param('id', AnId) id: string, @Body() { why }: ReasonDto, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.moves.reopen(id, why, by));
  }

  @Post(':id/close')
  @HttpCode(200)
  @May('review-request')
  close(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.moves.close(id, by));
  }

  @Post(':id/arrivals')
  @HttpCode(200)
  @May('receive-specimens')
  receive(@Param('id', AnId) id: string, @Body() body: ArrivalDto, @By() by: SignedIn): Promise<RequestView> {
    return this.after(id, by, this.arrivals.receive(id, body, by));
  }

  private async after(id: string, by: SignedIn, done: Promise<void>): Promise<RequestView> {
    await done;
    return this.requests.view(id, by);
  }
}
