import { Injectable } from '@nestjs/common';
import type { CallHandler, ExecutionContext, NestInterceptor } from '@nestjs/common';
import type { Response } from 'express';
import { tap } from 'rxjs';
import type { Observable } from 'rxjs';
import { etagOf } from './if-match.js';

/** Gives every answer that has a version its ETag. */
@Injectable()
export class VersionInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    return next.handle().pipe(
      tap((body: unknown) => {
        const version = (body as { version?: unknown } | null)?.version;
        const response = context.switchToHttp().getResponse<Response>();
        if (typeof version === 'number' && !response.headersSent) response.setHeader('ETag', etagOf(version));
      }),
    );
  }
}
