import { Transform } from 'class-transformer';

/** A yes or no in an address, where everything is text. */
export function FlagInQuery(): PropertyDecorator {
  return Transform(({ value }: { value: unknown }): unknown =>
    value === 'true' ? true : value === 'false' ? false : value,
  );
}

/** Several words in an address, with commas between. */
export function WordsInQuery(): PropertyDecorator {
  return Transform(({ value }: { value: unknown }): unknown => (typeof value === 'string' ? value.split(',') : value));
}
