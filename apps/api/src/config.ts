import {
  address,
  clockSetting,
  LOG_LEVELS,
  neededAddress,
  oneOf,
  readSettings,
  text,
  wholeNumber,
} from '#libs/hosting/src/index.js';
import type { LogLevel } from '#libs/hosting/src/index.js';

export interface ApiConfig {
  databaseUrl: string;
  redisUrl?: string | undefined;
  host: string;
  /** 0 takes any free port. */
  port: number;
  /** Where people reach it when a proxy stands before it, e.g. `https://lab.example`; then cookies ask for https. */
  publicUrl?: string | undefined;
  /** How many proxies stand before it: their word on where a request came from is taken. */
  proxies: number;
  /** What the lab's clock shows at first, UTC ms; the machine's time when undefined. */
  clockStartMs?: number | undefined;
  log: LogLevel;
  /** A session that is not used for so long ends, min. */
  sessionIdleMin: number;
  /** A session ends after so long, however busy it is, h. */
  sessionHours: number;
  /** Single sign-on (OpenID Connect); off unless all three are set. */
  signOnIssuer?: string | undefined;
  signOnClientId?: string | undefined;
  signOnClientSecret?: string | undefined;
  /** Lets a monitoring system read `/metrics` from another machine. */
  metricsToken?: string | undefined;
}

/** @throws {InvalidInput} naming every variable that is wrong */
export function readConfig(environment: NodeJS.ProcessEnv = process.env): ApiConfig {
  return readSettings(environment, {
    databaseUrl: neededAddress('DATABASE_URL', ['postgres:', 'postgresql:']),
    ...webSettings,
  });
}

/** What the API needs beside a database: the one-process way shares it. */
export const webSettings = {
  redisUrl: address('REDIS_URL', ['redis:', 'rediss:']),
  host: text('HOST', '127.0.0.1'),
  port: wholeNumber('PORT', { min: 0, max: 65_535 }, 3000),
  publicUrl: address('PUBLIC_URL', ['https:', 'http:']),
  proxies: wholeNumber('PROXIES', { min: 0, max: 10 }, 0),
  clockStartMs: clockSetting,
  log: oneOf('LOG', LOG_LEVELS, 'normal'),
  sessionIdleMin: wholeNumber('SESSION_IDLE_MINUTES', { min: 5, max: 10_080, unit: 'min' }, 720),
  sessionHours: wholeNumber('SESSION_HOURS', { min: 1, max: 720, unit: 'h' }, 168),
  signOnIssuer: address('SIGN_ON_ISSUER', ['https:', 'http:']),
  signOnClientId: text('SIGN_ON_CLIENT_ID', undefined),
  signOnClientSecret: text('SIGN_ON_CLIENT_SECRET', undefined),
  metricsToken: text('METRICS_TOKEN', undefined),
};
