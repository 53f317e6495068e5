import { Inject, Injectable } from '@nestjs/common';
import type { OnModuleInit } from '@nestjs/common';
import {
  allowInsecureRequests,
  authorizationCodeGrant,
  buildAuthorizationUrl,
  calculatePKCECodeChallenge,
  discovery,
  randomNonce,
  randomPKCECodeVerifier,
  randomState,
} from 'openid-client';
import type { Configuration } from 'openid-client';
import { LabError } from '#libs/errors/src/index.js';
import { bindSignOn, LabRecords } from '#libs/records/src/index.js';
import type { ApiConfig } from '../config.js';
import { API_CONFIG } from '../platform/api-config.js';
import { SessionsService } from '../platform/sessions.service.js';

/** What has to come back from the provider; the browser keeps it in a cookie until then. */
export interface SignOnSecrets {
  state: string;
  nonce: string;
  verifier: string;
}

export const SIGN_ON_PATH = '/api/v1/session/sign-on';

/** Single sign-on by OpenID Connect (authorization code flow with PKCE). Off unless the settings name a provider. */
@Injectable()
export class SignOnService implements OnModuleInit {
  private provider: Promise<Configuration> | null = null;

  constructor(
    private readonly records: LabRecords,
    private readonly sessions: SessionsService,
    @Inject(API_CONFIG) private readonly config: ApiConfig,
  ) {}

  onModuleInit(): void {
    const { signOnIssuer, signOnClientId, signOnClientSecret, publicUrl } = this.config;
    const set = [signOnIssuer, signOnClientId, signOnClientSecret].filter(Boolean).length;
    if (set === 0 || (set === 3 && publicUrl)) return;
    throw new Error(
      'Single sign-on needs SIGN_ON_ISSUER, SIGN_ON_CLIENT_ID, SIGN_ON_CLIENT_SECRET and PUBLIC_URL: set all or none.',
    );
  }

  get isOffered(): boolean {
    return Boolean(this.config.signOnIssuer);
  }

  /** Where to send the browser, and what it has to bring back. */
  async begin(): Promise<{ url: string; secrets: SignOnSecrets }> {
    const secrets = { state: randomState(), nonce: randomNonce(), verifier: randomPKCECodeVerifier() };
    const url = buildAuthorizationUrl(await this.discovered(), {
      redirect_uri: this.backUrl(),
      scope: 'openid email profile',
      state: secrets.state,
      nonce: secrets.nonce,
      code_challenge: await calculatePKCECodeChallenge(secrets.verifier),
      code_challenge_method: 'S256',
    });
    return { url: url.href, secrets };
  }

  /**
   * Takes back a browser that the provider has sent, and opens a session for the person.
   *
   * @param query what the provider added to the address
   * @throws {LabError} `sign-on/wrong-credentials` when the answer is not for this browser, or nobody here has that address
   */
  async finish(query: string, { state, nonce, verifier }: SignOnSecrets, agent: string): Promise<string> {
    const url = new URL(`${this.backUrl()}?${query}`);
    const checks = { expectedState: state, expectedNonce: nonce, pkceCodeVerifier: verifier, idTokenExpected: true };
    const tokens = await authorizationCodeGrant(await this.discovered(), url, checks).catch((cause: unknown) => {
      throw new LabError('sign-on/wrong-credentials', 'The sign-on did not end well. Begin again.', {}, { cause });
    });
    const { sub, email, email_verified: verified } = tokens.claims()!;
    const known = typeof email === 'string' && verified === true ? email : null;
    const personId = await this.records.quietly((manager) => bindSignOn(manager, sub, known));
    if (personId) return this.sessions.open(personId, agent);
    throw new LabError(
      'sign-on/wrong-credentials',
      'The lab does not know your mail address. Ask its manager to add you.',
    );
  }

  private backUrl(): string {
    return `${this.config.publicUrl}${SIGN_ON_PATH}/back`;
  }

  /** Asked once; asked anew after the provider could not be reached. */
  private discovered(): Promise<Configuration> {
    const { signOnIssuer, signOnClientId, signOnClientSecret } = this.config;
    if (!signOnIssuer) throw new LabError('sign-on/none', 'This lab has no single sign-on.');
    const issuer = new URL(signOnIssuer);
    const plain = issuer.protocol === 'http:' ? { execute: [allowInsecureRequests] } : {};
    this.provider ??= discovery(issuer, signOnClientId!, signOnClientSecret, undefined, plain).catch(
      (cause: unknown) => {
        this.provider = null;
        throw new LabError(
          'sign-on/unavailable',
          'The single sign-on cannot be reached. Try again, or use your password.',
          {},
          { cause },
        );
      },
    );
    return this.provider;
  }
}
