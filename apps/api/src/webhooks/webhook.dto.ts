import { WEBHOOK_KINDS } from '#libs/contract/src/index.js';
import type { NewWebhookBody, WebhookKind } from '#libs/contract/src/index.js';
import { ValidateBy } from 'class-validator';
import { ListOf, Text } from '../platform/fields.js';

const ALLOWED_URL = 'an https address without name and password, or an http one of this machine';

const THIS_MACHINE = /^(localhost|127(\.\d+){3}|\[::1\])$/;

/** What is sent is signed, not secret; all the same it goes over an open line only where there is none. */
export function isWebhookUrl(value: unknown): boolean {
  if (typeof value !== 'string' || !URL.canParse(value)) return false;
  const { protocol, hostname, username, password, hash } = new URL(value);
  if (username || password || hash) return false;
  return protocol === 'https:' || (protocol === 'http:' && THIS_MACHINE.test(hostname));
}

const isKind = (value: unknown) => (WEBHOOK_KINDS as readonly unknown[]).includes(value);

export class NewWebhookDto implements NewWebhookBody {
  @Text({ max: 500, example: 'https://tickets.northmoor.example/lab' })
  @ValidateBy(
    { name: 'webhookUrl', validator: { validate: isWebhookUrl, defaultMessage: () => ALLOWED_URL } },
    { context: { allowed: ALLOWED_URL, unit: '' } },
  )
  url!: string;

  @ListOf(
    isKind,
    `one of ${WEBHOOK_KINDS.join(', ')}`,
    { type: 'string', enum: [...WEBHOOK_KINDS] },
    { min: 1, max: 40 },
  )
  kinds!: WebhookKind[];
}
