import { Inject, Injectable } from '@nestjs/common';
import type { CanActivate, ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { LabError } from '#libs/errors/src/index.js';
import type { ApiConfig } from '../config.js';
import { API_CONFIG } from './api-config.js';
import { readCookie, sessionCookieName } from './cookies.js';
import { refuseForgery } from './forgery.js';
import { ACCESS } from './may.js';
import type { Access } from './may.js';
import { SessionsService } from './sessions.service.js';
import type { LabRequest, SignedIn } from './signed-in.js';

const BEARER = /^Bearer ([\w-]{20,200})$/;

/** Establishes who makes a request, and refuses what they may not do. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    private readonly sessions: SessionsService,
    private readonly reflector: Reflector,
    @Inject(API_CONFIG) private readonly config: ApiConfig,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<LabRequest>();
    const access = this.reflector.get<Access | undefined>(ACCESS, context.getHandler());
    const bearer = request.headers.authorization;
    if (bearer === undefined) refuseForgery(request);
    const signedIn = bearer === undefined ? await this.bySession(request) : await this.byToken(bearer);
    if (signedIn) request.signedIn = signedIn;
    if (access === 'everybody') return true;
    if (!signedIn) throw new LabError('session/needed', 'Sign in first.');
    if (access?.some((permission) => signedIn.permissions.has(permission))) return true;
    throw new LabError('access/forbidden', 'This is not for your role. Ask the manager of the lab.');
  }

  private async bySession(request: LabRequest): Promise<SignedIn | null> {
    const token = readCookie(request, sessionCookieName(this.config));
    return token ? this.sessions.findBySession(token) : null;
  }

  private async byToken(header: string): Promise<SignedIn | null> {
    const [, token] = BEARER.exec(header) ?? [];
    return token ? this.sessions.findByToken(token) : null;
  }
}
