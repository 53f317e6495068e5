import { ValidationPipe } from '@nestjs/common';
import type { ValidationError } from 'class-validator';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { FieldContext } from './fields.js';

/** Checks the shape of everything that comes in; unknown fields are refused, and every refusal names the field and what is allowed. */
export function shapeCheck(): ValidationPipe {
  return new ValidationPipe({
    transform: true,
    whitelist: true,
    forbidNonWhitelisted: true,
    forbidUnknownValues: true,
    stopAtFirstError: true,
    exceptionFactory: (errors) => new InvalidInput(problemsOf(errors)),
  });
}

export function problemsOf(errors: readonly ValidationError[], path = ''): FieldProblem[] {
  return errors.flatMap((error) => {
    const field = /^\d+$/.test(error.property)
      ? `${path}[${error.property}]`
      : [path, error.property].filter(Boolean).join('.');
    const own = Object.entries(error.constraints ?? {}).slice(0, 1);
    return [
      ...own.map(([name, message]) => problemOf(field, error, name, message)),
      ...problemsOf(error.children ?? [], field),
    ];
  });
}

function problemOf(field: string, error: ValidationError, name: string, message: string): FieldProblem {
  const found = plain(error.value);
  if (name === 'whitelistValidation')
    // What it holds is not told: behind a mistyped name there may be a password.
    return fieldProblem({ field, found: 'given', allowed: 'nothing; there is no such field', unit: '' });
  const context = error.contexts?.[name] as FieldContext | undefined;
  // A stock decorator says `peakForceN must not be less than 1`: what follows the name is what is allowed.
  const allowed = context?.allowed ?? message.replace(error.property, '').replace(/^\s*(must|should) (be )?/, '');
  return fieldProblem({ field, found: context?.secret ? sizeOf(found) : found, allowed, unit: context?.unit ?? '' });
}

/** How long a secret is, blanks around it not counted; nothing else is told of it. */
function sizeOf(secret: unknown): number | null {
  return typeof secret === 'string' && secret !== '' ? secret.trim().length : null;
}

function plain(value: unknown): unknown {
  return typeof value === 'object' && value !== null ? (Array.isArray(value) ? 'a list' : 'an object') : value;
}
