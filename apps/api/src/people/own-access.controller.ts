import { Body, Controller, Delete, Get, HttpCode, Param, ParseUUIDPipe, Post, Put } from '@nestjs/common';
import type { OpenSessionView, TokenView } from '#libs/contract/src/index.js';
import { By } from '../platform/by.js';
import { May } from '../platform/may.js';
import { ShownOnce } from '../platform/shown-once.js';
import type { SignedIn } from '../platform/signed-in.js';
import { OwnAccessService } from './own-access.service.js';
import { NewTokenDto, OwnPasswordDto } from './session.dto.js';

/** What people do about their own ways in. A token cannot make tokens: for that one signs in. */
@Controller('own')
export class OwnAccessController {
  constructor(private readonly access: OwnAccessService) {}

  @Get('sessions')
  @May('see-own')
  sessions(@By() by: SignedIn): Promise<OpenSessionView[]> {
    return this.access.sessions(by);
  }

  /** Signs that browser out. */
  @Delete('sessions/:id')
  @HttpCode(204)
  @May('see-own')
  endSession(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<void> {
    return this.access.endSession(id, by);
  }

  /** Changes one's own password. Every other session ends, and so do all tokens and keys of feeds. */
  @Put('password')
  @HttpCode(204)
  @May('see-own')
  changePassword(@Body() body: OwnPasswordDto, @By() by: SignedIn): Promise<void> {
    return this.access.changePassword(body, by);
  }

  @Get('tokens')
  @May('see-own')
  tokens(@By() by: SignedIn): Promise<TokenView[]> {
    return this.access.tokens(by);
  }

  /** Makes a token for a program. It is shown in this answer and never again. */
  @Post('tokens')
  @ShownOnce()
  @May('see-own')
  makeToken(@Body() body: NewTokenDto, @By() by: SignedIn): Promise<TokenView> {
    return this.access.makeToken(body, by);
  }

  @Delete('tokens/:id')
  @HttpCode(204)
  @May('see-own')
  endToken(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<void> {
    return this.access.endToken(id, by);
  }
}
