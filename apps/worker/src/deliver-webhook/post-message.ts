import { lookup } from 'node:dns';
import type { LookupAddress } from 'node:dns';
import { request as requestHttp } from 'node:http';
import { request as requestHttps } from 'node:https';
import { isIP } from 'node:net';
import type { LookupFunction } from 'node:net';
import type { TryOutcome } from '#libs/records/src/index.js';
import { isPublicAddress } from './public-address.js';

export interface Message {
  url: string;
  body: string;
  headers: Record<string, string>;
}

const PATIENCE_MS = 5_000;

const PRIVATE = 'The address is not one of the public internet. WEBHOOKS_TO_PRIVATE=yes would allow it.';

/**
 * Posts a message and says how that went; never throws. Redirects are not followed, and the answer's body is not read.
 *
 * @param toPrivate whether addresses of private networks and of this machine are allowed; the address is judged when it is
 *   connected to, so that a name cannot mean another address a moment later
 */
export function postMessage({ url, body, headers }: Message, toPrivate: boolean): Promise<TryOutcome> {
  const { protocol, hostname } = new URL(url);
  const address = hostname.replace(/^\[|\]$/g, '');
  if (!toPrivate && isIP(address) && !isPublicAddress(address))
    return Promise.resolve({ status: null, trouble: PRIVATE });
  const post = protocol === 'https:' ? requestHttps : requestHttp;
  return new Promise((resolve) => {
    const failed = (error: Error) => resolve({ status: null, trouble: troubleOf(error) });
    const options = { method: 'POST', headers, agent: false, ...(toPrivate ? {} : { lookup: publicOnly }) } as const;
    const sent = post(url, { ...options, signal: AbortSignal.timeout(PATIENCE_MS) }, (answer) => {
      const status = answer.statusCode ?? 0;
      answer.destroy();
      resolve({ status, trouble: status >= 200 && status < 300 ? null : `The receiver answered with ${status}.` });
    });
    sent.once('error', failed);
    sent.end(body);
  });
}

/** Finds the addresses of a name and hands on the public ones only. */
const publicOnly: LookupFunction = (hostname, options, callback) => {
  lookup(hostname, { ...options, all: true }, (error: Error | null, found: LookupAddress[]) => {
    if (error) return callback(error, '');
    const good = found.filter(({ address }) => isPublicAddress(address));
    if (good.length === 0) return callback(Object.assign(new Error(PRIVATE), { code: 'PRIVATE' }), '');
    return options.all ? callback(null, good) : callback(null, good[0]!.address, good[0]!.family);
  });
};

function troubleOf(error: Error & { code?: string }): string {
  if (error.code === 'PRIVATE') return PRIVATE;
  if (error.name === 'AbortError' || error.name === 'TimeoutError')
    return `Nothing came back within ${PATIENCE_MS / 1_000} s.`;
  return `The receiver was not reached (${error.code ?? 'unknown'}).`;
}
