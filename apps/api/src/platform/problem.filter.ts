import { Catch } from '@nestjs/common';
import type { ArgumentsHost, ExceptionFilter } from '@nestjs/common';
import type { Response } from 'express';
import type { Log } from '#libs/hosting/src/index.js';
import { problemOf } from './problem.js';
import type { LabRequest } from './signed-in.js';

/** The one place where what was thrown becomes an answer. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(private readonly log: Log) {}

  catch(error: unknown, host: ArgumentsHost): void {
    const request = host.switchToHttp().getRequest<LabRequest>();
    const response = host.switchToHttp().getResponse<Response>();
    const problem = { ...problemOf(error, request.requestId), instance: request.originalUrl.split('?')[0] };
    if (problem.status >= 500)
      this.log.error('request failed', { requestId: request.requestId, status: problem.status }, error);
    if (response.headersSent) return void response.destroy();
    if (problem.status === 503) response.setHeader('Retry-After', '1');
    response.status(problem.status).type('application/problem+json').send(JSON.stringify(problem));
  }
}
