import { applyDecorators, createParamDecorator, Injectable, SetMetadata } from '@nestjs/common';
import type { CallHandler, ExecutionContext, NestInterceptor } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { ApiBody, ApiConsumes } from '@nestjs/swagger';
import type { Observable } from 'rxjs';
import { fieldProblem, InvalidInput, LabError } from '#libs/errors/src/index.js';
import type { LabRequest } from './signed-in.js';

const LIMIT = 'file body limit';

/** The endpoint takes the bytes of a file as its body, not JSON. @param limitBytes the most that is taken */
export function TakesFile(limitBytes: number, mediaType: 'text/csv' | 'application/octet-stream') {
  const format = mediaType === 'text/csv' ? {} : { format: 'binary' };
  return applyDecorators(
    SetMetadata(LIMIT, limitBytes),
    ApiConsumes(mediaType),
    ApiBody({ schema: { type: 'string', ...format } }),
  );
}

/** Hands the bytes to a method that `TakesFile`. */
export const FileBody = createParamDecorator((_: unknown, context: ExecutionContext): Buffer => {
  return context.switchToHttp().getRequest<LabRequest>().body as Buffer;
});

/**
 * Reads the body of an endpoint that takes a file. It runs after the guard, so that nobody can send a file who may not, and before
 * the Idempotency-Key is claimed, so that the claim covers every byte.
 */
@Injectable()
export class FileBodyInterceptor implements NestInterceptor {
  constructor(private readonly reflector: Reflector) {}

  async intercept(context: ExecutionContext, next: CallHandler): Promise<Observable<unknown>> {
    const limitBytes = this.reflector.get<number | undefined>(LIMIT, context.getHandler());
    const request = context.switchToHttp().getRequest<LabRequest>();
    if (limitBytes !== undefined) request.body = await readBytes(request, limitBytes);
    return next.handle();
  }
}

/**
 * @throws {LabError} `file/too-large`, `file/broken-off`
 * @throws {InvalidInput} when there is nothing in it
 */
async function readBytes(request: LabRequest, limitBytes: number): Promise<Buffer> {
  const parts: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const part of request as AsyncIterable<Buffer>) {
      bytes += part.length;
      if (bytes > limitBytes) throw tooLarge(limitBytes);
      parts.push(part);
    }
  } catch (cause) {
    if (cause instanceof LabError) throw cause;
    throw new LabError('file/broken-off', 'The file did not arrive whole. Send it again.', {}, { cause });
  }
  if (bytes > 0) return Buffer.concat(parts);
  throw new InvalidInput([
    fieldProblem({ field: 'body', found: null, allowed: 'the bytes of a file, not as JSON', unit: '' }),
  ]);
}

function tooLarge(limitBytes: number): LabError {
  const mb = limitBytes / 1024 / 1024;
  return new LabError('file/too-large', `The file is larger than ${mb} MB, which is the most that is taken.`, {
    limitBytes,
  });
}
