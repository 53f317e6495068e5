import { createHash } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { Injectable } from '@nestjs/common';
import type { CallHandler, ExecutionContext, NestInterceptor } from '@nestjs/common';
import type { Response } from 'express';
import { from, lastValueFrom } from 'rxjs';
import type { Observable } from 'rxjs';
import { Reflector } from '@nestjs/core';
import { DataSource } from 'typeorm';
import { fieldProblem, InvalidInput, LabError } from '#libs/errors/src/index.js';
import { claimKey, storeAnswer, releaseKey, underClaim } from '#libs/records/src/index.js';
import type { Claim } from '#libs/records/src/index.js';
import { SHOWN_ONCE } from './shown-once.js';
import type { LabRequest } from './signed-in.js';

const LOOK_EVERY_MS = 100;
const WAIT_AT_MOST_MS = 1_500;
const KEY = /^[\w.:-]{8,128}$/;

/**
 * A POST that carries an Idempotency-Key is done once: its retry gets the first answer again, with `Idempotency-Replayed: true`.
 * That it was done is kept in the transaction of the change itself, so that this holds also when this process dies in between.
 * Keys are each person's own and are kept for two days. A key that comes back with another address or another body, down to the
 * last byte of a file, is refused. A refused request was not done, and its key may be used again.
 */
@Injectable()
export class IdempotencyInterceptor implements NestInterceptor {
  constructor(
    private readonly records: DataSource,
    private readonly reflector: Reflector,
  ) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const request = context.switchToHttp().getRequest<LabRequest>();
    const key = request.headers['idempotency-key'];
    if (request.method !== 'POST' || key === undefined || !request.signedIn) return next.handle();
    const response = context.switchToHttp().getResponse<Response>();
    const isSecret = this.reflector.get<true | undefined>(SHOWN_ONCE, context.getHandler()) === true;
    return from(this.once(request.signedIn.id, keyOf(key), hashOf(request), { response, next, isSecret }));
  }

  private async once(
    personId: string,
    key: string,
    hash: string,
    { response, next, isSecret }: { response: Response; next: CallHandler; isSecret: boolean },
  ): Promise<unknown> {
    const claim = await this.claimOrWait(personId, key, hash);
    if (claim.state === 'answered') {
      response.status(claim.status).setHeader('Idempotency-Replayed', 'true');
      return claim.body;
    }
    if (claim.state !== 'yours') throw new LabError(`idempotency-key/${claim.state}`, SENTENCES[claim.state]);
    const held = { personId, key, claimId: claim.claimId };
    try {
      const body: unknown = await underClaim(held, () => lastValueFrom(next.handle(), { defaultValue: null }));
      if (!isSecret) await storeAnswer(this.records, held, response.statusCode, body);
      return body;
    } catch (error) {
      await releaseKey(this.records, held).catch(() => {}); // it frees itself in a while
      throw error;
    }
  }

  /** A double tap comes while the first is at work: its answer is worth a moment's wait. */
  private async claimOrWait(personId: string, key: string, hash: string): Promise<Claim> {
    for (let waitedMs = 0; ; waitedMs += LOOK_EVERY_MS) {
      const claim = await claimKey(this.records, personId, key, hash);
      const mayCome = claim.state === 'at-work' || claim.state === 'done-already';
      if (!mayCome || waitedMs >= WAIT_AT_MOST_MS) return claim;
      await pause(LOOK_EVERY_MS);
    }
  }
}

const SENTENCES = {
  'at-work': 'The first request with this key is still at work. Ask again in a moment.',
  'done-already': 'This was done before, but its answer was lost. Reload to see it.',
  'other-request':
    'This key was used for something else, or for a file with other bytes. Nothing of this was saved: use a new key.',
};

function keyOf(header: string | string[]): string {
  const key = String(header);
  if (KEY.test(key)) return key;
  const allowed = '8 to 128 letters, digits and . _ : -';
  throw new InvalidInput([fieldProblem({ field: 'Idempotency-Key', found: key, allowed, unit: '' })]);
}

function hashOf({ method, originalUrl, body }: LabRequest): string {
  const hash = createHash('sha256');
  if (!Buffer.isBuffer(body)) return hash.update(JSON.stringify([method, originalUrl, body])).digest('hex');
  return hash
    .update(JSON.stringify([method, originalUrl]))
    .update(body)
    .digest('hex');
}
