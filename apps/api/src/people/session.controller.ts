import { Body, Controller, Delete, Get, HttpCode, Inject, Post, Query, Req, Res } from '@nestjs/common';
import type { Response } from 'express';
import type { DemoPerson, SessionView } from '#libs/contract/src/index.js';
import { DEMO_PASSWORD, LabRecords, labSettings, listActive } from '#libs/records/src/index.js';
import type { ApiConfig } from '../config.js';
import { API_CONFIG } from '../platform/api-config.js';
import { CurrentLab } from '../platform/current-lab.js';
import { By } from '../platform/by.js';
import { sessionCookie, sessionCookieName } from '../platform/cookies.js';
import { May, Open } from '../platform/may.js';
import { SessionsService } from '../platform/sessions.service.js';
import type { LabRequest, SignedIn } from '../platform/signed-in.js';
import { SignInDto, SignOutDto } from './session.dto.js';

@Controller('session')
export class SessionController {
  constructor(
    private readonly sessions: SessionsService,
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
    @Inject(API_CONFIG) private readonly config: ApiConfig,
  ) {}

  /** Signs in. A session that this browser had before ends. */
  @Post()
  @HttpCode(200)
  @Open()
  async signIn(
    @Body() body: SignInDto,
    @Req() request: LabRequest,
    @Res({ passthrough: true }) response: Response,
  ): Promise<SessionView> {
    const attempt = { ...body, place: request.ip ?? '', agent: request.headers['user-agent'] ?? '' };
    const token = await this.sessions.signIn(attempt);
    if (request.signedIn) await this.sessions.end(request.signedIn, false);
    response.cookie(sessionCookieName(this.config), token, sessionCookie(this.config));
    return this.viewOf((await this.sessions.findBySession(token))!);
  }

  /** Who is signed in, and what they may do. */
  @Get()
  @May('see-own')
  view(@By() by: SignedIn): Promise<SessionView> {
    return this.viewOf(by);
  }

  @Delete()
  @HttpCode(204)
  @May('see-own')
  async signOut(
    @Query() asked: SignOutDto,
    @By() by: SignedIn,
    @Res({ passthrough: true }) response: Response,
  ): Promise<void> {
    await this.sessions.end(by, asked.all ?? false);
    response.clearCookie(sessionCookieName(this.config), { ...sessionCookie(this.config), maxAge: undefined });
  }

  /** The people of the demo lab with their password; nobody in any other lab. */
  @Get('demo')
  @Open()
  async demo(): Promise<DemoPerson[]> {
    const { demo } = await labSettings(this.records.manager);
    if (!demo) return [];
    const people = await listActive(this.records.manager);
    return people.map(({ email, name, roles }) => ({ email, name, role: roles[0]!, password: DEMO_PASSWORD }));
  }

  private async viewOf({ id, name, email, roles, teams, permissions, askedAtMs }: SignedIn): Promise<SessionView> {
    const lab = await this.current.settings({ askedAtMs });
    return {
      person: { id, name, email, roles: [...roles], teams: [...teams] },
      permissions: [...permissions],
      lab: { name: lab.name, timeZone: lab.timeZone, now: this.records.clock.now().toISOString() },
      demo: lab.demo,
    };
  }
}
