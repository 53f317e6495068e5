import { createParamDecorator } from '@nestjs/common';
import type { ExecutionContext } from '@nestjs/common';
import { LabError } from '#libs/errors/src/index.js';
import type { LabRequest, SignedIn } from './signed-in.js';

/** Hands the one who makes the request to a controller's method. */
export const By = createParamDecorator((_: unknown, context: ExecutionContext): SignedIn => {
  const { signedIn } = context.switchToHttp().getRequest<LabRequest>();
  if (!signedIn) throw new LabError('session/needed', 'Sign in first.');
  return signedIn;
});
