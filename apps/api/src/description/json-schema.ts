import type { Schema } from './schema.js';

/** What the framework writes, in the words of OpenAPI 3.0. */
interface Written extends Omit<Schema, 'exclusiveMinimum' | 'exclusiveMaximum'> {
  nullable?: boolean;
  exclusiveMinimum?: boolean | number;
  exclusiveMaximum?: boolean | number;
}

/**
 * Turns a description in the words of OpenAPI 3.0 into those of 3.1, which are JSON Schema's own: what may be null says so by its
 * type, and a limit that is itself no longer allowed is a number.
 *
 * @param part any part of the description, schemas in it at any depth
 */
export function inJsonSchema<Part>(part: Part): Part {
  if (Array.isArray(part)) return part.map(inJsonSchema) as Part;
  if (typeof part !== 'object' || part === null) return part;
  const inner = Object.fromEntries(Object.entries(part).map(([name, value]) => [name, inJsonSchema(value)])) as Written;
  return nullAsType(limitsAsNumbers(inner)) as Part;
}

function nullAsType({ nullable, ...schema }: Written): Written {
  // A property of the name `nullable` is a schema, not a word about one.
  if (typeof nullable !== 'boolean') return nullable === undefined ? schema : { ...schema, nullable };
  if (!nullable) return schema;
  const { description, ...rest } = schema;
  if (rest.type === undefined || rest.enum !== undefined)
    return { ...(description ? { description } : {}), anyOf: [rest as Schema, { type: 'null' }] };
  return { ...schema, type: [rest.type, 'null'].flat() };
}

function limitsAsNumbers(schema: Written): Written {
  const { minimum, maximum, exclusiveMinimum, exclusiveMaximum, ...rest } = schema;
  if (exclusiveMinimum !== true && exclusiveMaximum !== true) return schema;
  return {
    ...rest,
    ...(minimum === undefined ? {} : { [exclusiveMinimum === true ? 'exclusiveMinimum' : 'minimum']: minimum }),
    ...(maximum === undefined ? {} : { [exclusiveMaximum === true ? 'exclusiveMaximum' : 'maximum']: maximum }),
  };
}
