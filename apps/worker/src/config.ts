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

export interface WorkerConfig {
  databaseUrl: string;
  redisUrl?: string | undefined;
  /** A mail server, e.g. `smtp://mail.lab.example:587`; without one notices are shown in the application only. */
  smtpUrl?: string | undefined;
  mailFrom?: string | undefined;
  /** Whether webhooks may lead into private networks and to this machine. */
  webhooksToPrivate?: 'yes' | 'no' | undefined;
  /** Where people reach the web page: links in mails begin with it. */
  publicUrl: string;
  /** What the lab's clock shows at first, UTC ms; the machine's time when undefined. */
  clockStartMs?: number | undefined;
  log: LogLevel;
  /** A worker that shows no sign of life for so long is taken for dead, ms. */
  lockMs: number;
}

/** @throws {InvalidInput} naming every variable that is wrong */
export function readConfig(environment: NodeJS.ProcessEnv = process.env): WorkerConfig {
  return readSettings(environment, {
    databaseUrl: neededAddress('DATABASE_URL', ['postgres:', 'postgresql:']),
    redisUrl: address('REDIS_URL', ['redis:', 'rediss:']),
    smtpUrl: address('SMTP_URL', ['smtp:', 'smtps:']),
    mailFrom: text('MAIL_FROM', undefined),
    webhooksToPrivate: oneOf('WEBHOOKS_TO_PRIVATE', ['yes', 'no'] as const, 'no'),
    publicUrl: text('PUBLIC_URL', 'http://localhost:3000'),
    clockStartMs: clockSetting,
    log: oneOf('LOG', LOG_LEVELS, 'normal'),
    lockMs: wholeNumber('TASK_LOCK_MS', { min: 1_000, max: 600_000, unit: 'ms' }, 30_000),
  });
}
