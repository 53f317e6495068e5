import { createHmac } from 'node:crypto';

/**
 * The value of `Webhook-Signature`: `t` is when it was signed, in seconds of Unix time, and `v1` the HMAC-SHA-256 (RFC 2104) of
 * `t`, a full stop and the body, in hex. A receiver refuses a `t` that is too old, so that nobody can send it again later.
 */
export function signatureOf(secret: string, body: string, nowMs: number): string {
  const t = Math.floor(nowMs / 1_000);
  return `t=${t},v1=${createHmac('sha256', secret).update(`${t}.${body}`).digest('hex')}`;
}
