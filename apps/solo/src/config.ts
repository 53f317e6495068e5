import { webSettings } from '#apps/api/src/config.js';
import { address, LOG_LEVELS, oneOf, readSettings, text } from '#libs/hosting/src/index.js';

export type SoloConfig = ReturnType<typeof readConfig>;

/** @throws {InvalidInput} naming every variable that is wrong */
export function readConfig(environment: NodeJS.ProcessEnv = process.env) {
  return readSettings(environment, {
    ...webSettings,
    /** Whoever tries it wants to read the few lines that matter. */
    log: oneOf('LOG', LOG_LEVELS, 'quiet'),
    /** Another PostgreSQL than the one that comes along. */
    databaseUrl: address('DATABASE_URL', ['postgres:', 'postgresql:']),
    /** Where the database that comes along keeps its files. */
    dataFolder: text('LOADTRAIN_DATA', undefined),
    smtpUrl: address('SMTP_URL', ['smtp:', 'smtps:']),
    mailFrom: text('MAIL_FROM', undefined),
    webhooksToPrivate: oneOf('WEBHOOKS_TO_PRIVATE', ['yes', 'no'] as const, 'no'),
  });
}
