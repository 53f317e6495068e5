import { Injectable } from '@nestjs/common';
import type { ArgumentMetadata, PipeTransform } from '@nestjs/common';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { isId } from '../platform/fields.js';

/** Lets only ids through a path; what is none is refused by the name of its place. */
@Injectable()
export class AnId implements PipeTransform<unknown, string> {
  transform(value: unknown, { data = 'id' }: ArgumentMetadata): string {
    if (isId(value)) return value as string;
    throw new InvalidInput([fieldProblem({ field: data, found: value, allowed: 'an id (UUID)', unit: '' })]);
  }
}
