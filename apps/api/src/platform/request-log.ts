import { randomUUID } from 'node:crypto';
import type { RequestHandler } from 'express';
import type { Log } from '#libs/hosting/src/index.js';
import type { LabRequest } from './signed-in.js';

const GIVEN_ID = /^[\w-]{8,64}$/;

/** Gives every request an id (or keeps the one that a proxy gave it), and writes one line when it is answered. */
export function requestLog(log: Log): RequestHandler {
  return (incoming, response, next) => {
    const request = incoming as LabRequest;
    const given = request.headers['x-request-id'];
    request.requestId = typeof given === 'string' && GIVEN_ID.test(given) ? given : randomUUID();
    response.setHeader('X-Request-Id', request.requestId);
    const began = process.hrtime.bigint();
    response.once('finish', () => {
      const tookMs = Math.round(Number(process.hrtime.bigint() - began) / 1e4) / 100;
      const path = request.originalUrl.split('?')[0];
      log.log('answered', {
        requestId: request.requestId,
        method: request.method,
        path,
        status: response.statusCode,
        tookMs,
        personId: request.signedIn?.id,
      });
    });
    next();
  };
}
