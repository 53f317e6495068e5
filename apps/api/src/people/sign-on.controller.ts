import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import { ApiExcludeEndpoint } from '@nestjs/swagger';
import type { CookieOptions, Response } from 'express';
import { LabError } from '#libs/errors/src/index.js';
import type { ApiConfig } from '../config.js';
import { API_CONFIG } from '../platform/api-config.js';
import { isSecure, readCookie, sessionCookie, sessionCookieName } from '../platform/cookies.js';
import { Open } from '../platform/may.js';
import type { LabRequest } from '../platform/signed-in.js';
import { SIGN_ON_PATH, SignOnService } from './sign-on.service.js';
import type { SignOnSecrets } from './sign-on.service.js';

const COOKIE = 'lab-sign-on';
const WITHIN_MS = 600_000;
const SECRET_LENGTH = 43; // each of the three: 32 random bytes in base64url

@Controller('session')
export class SignOnController {
  constructor(
    private readonly signOn: SignOnService,
    @Inject(API_CONFIG) private readonly config: ApiConfig,
  ) {}

  /** The ways in that this lab has beside a password. */
  @Get('ways')
  @Open()
  ways(): { signOn: boolean } {
    return { signOn: this.signOn.isOffered };
  }

  /** Sends the browser to the provider. */
  @Get('sign-on')
  @Open()
  @ApiExcludeEndpoint()
  async begin(@Res() response: Response): Promise<void> {
    const { url, secrets } = await this.signOn.begin();
    response.cookie(COOKIE, `${secrets.state}${secrets.nonce}${secrets.verifier}`, this.cookie()).redirect(url);
  }

  /** Where the provider sends the browser back to. */
  @Get('sign-on/back')
  @Open()
  @ApiExcludeEndpoint()
  async finish(@Req() request: LabRequest, @Res() response: Response): Promise<void> {
    const query = request.originalUrl.split('?')[1] ?? '';
    const token = await this.signOn.finish(
      query,
      secretsOf(readCookie(request, COOKIE)),
      request.headers['user-agent'] ?? '',
    );
    response.clearCookie(COOKIE, { ...this.cookie(), maxAge: undefined });
    response.cookie(sessionCookieName(this.config), token, sessionCookie(this.config)).redirect('/');
  }

  /** It has to come along when the provider sends the browser back, so it cannot be as strict as the session's. */
  private cookie(): CookieOptions {
    return { httpOnly: true, sameSite: 'lax', secure: isSecure(this.config), path: SIGN_ON_PATH, maxAge: WITHIN_MS };
  }
}

function secretsOf(cookie: string | null): SignOnSecrets {
  if (cookie?.length !== 3 * SECRET_LENGTH)
    throw new LabError('sign-on/wrong-credentials', 'This sign-on was not begun in this browser. Begin again.');
  const [state, nonce, verifier] = [0, 1, 2].map((nr) => cookie.slice(nr * SECRET_LENGTH, (nr + 1) * SECRET_LENGTH));
  return { state: state!, nonce: nonce!, verifier: verifier! };
}
