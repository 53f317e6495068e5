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
    // What nobody asked for is not missing, even when it is empty.
    return fieldProblem({ field, found: found || 'empty', allowed: 'nothing; there is no such field', unit: '' });
  const context = error.contexts?.[name] as FieldContext | undefined;
  // A stock decorator says `peakForceN must not be less than 1`: what follows the name is what is allowed.
  const allowed = context?.allowed ?? message.replace(error.property, '').replace(/^\s*(must|should) (be )?/, '');
  return fieldProblem({ field, found, allowed, unit: context?.unit ?? '' });
}

function plain(value: unknown): unknown {
  return typeof value === 'object' && value !== null ? (Array.isArray(value) ? 'a list' : 'an object') : value;
}
