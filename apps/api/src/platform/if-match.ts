import { createParamDecorator } from '@nestjs/common';
import type { ExecutionContext } from '@nestjs/common';
import { ApiHeader } from '@nestjs/swagger';
import { fieldProblem, InvalidInput, LabError } from '#libs/errors/src/index.js';
import type { LabRequest } from './signed-in.js';

/** The version that an answer shows, as its ETag. */
export function etagOf(version: number): string {
  return `"${version}"`;
}

/** @throws {LabError} `http/version-needed` without the header, {InvalidInput} when it is not an ETag of ours */
export function versionIn(header: string | undefined): number {
  if (header === undefined) {
    throw new LabError(
      'http/version-needed',
      'Send the ETag that you read as If-Match, so that nobody else’s change is lost.',
    );
  }
  const [, digits] = /^(?:W\/)?"(\d{1,9})"$/.exec(header.trim()) ?? [];
  if (digits !== undefined) return Number(digits);
  throw new InvalidInput([
    fieldProblem({ field: 'If-Match', found: header, allowed: 'an ETag as it was read, e.g. "3"', unit: '' }),
  ]);
}

/** Hands the version that the sender has read to a controller's method; who edits has to say it. */
export const IfMatch = createParamDecorator(
  (_: unknown, context: ExecutionContext): number => {
    return versionIn(context.switchToHttp().getRequest<LabRequest>().headers['if-match']);
  },
  [
    (target, method) => {
      const inDescription = ApiHeader({
        name: 'If-Match',
        required: true,
        description: 'The version that was read, as its ETag.',
        schema: { type: 'string', pattern: '^(W/)?"\\d{1,9}"$' },
      });
      inDescription(target, method!, Object.getOwnPropertyDescriptor(target, method!)!);
    },
  ],
);
