import { referred } from './schema.js';
import type { Schema } from './schema.js';

/** Whoever sends something may hold it read-only, and may hold an interface where any fields are taken. */
export type Way = 'sent' | 'answered';

/** A schema as a type of TypeScript; references become names. */
export function typeText(schema: Schema, way: Way): string {
  const name = referred(schema);
  if (name !== null) return name;
  const { anyOf, oneOf, allOf, enum: choices, type } = schema;
  const parts = anyOf ?? oneOf;
  if (parts) return `(${parts.map((part) => typeText(part, way)).join(' | ')})`;
  if (allOf) return `(${allOf.map((part) => typeText(part, way)).join(' & ')})`;
  if (choices) return `(${choices.map((choice) => JSON.stringify(choice)).join(' | ')})`;
  if (type === undefined) return 'unknown';
  const types = [type].flat().map((each) => plainText(each, schema, way));
  return types.length > 1 ? `(${types.join(' | ')})` : types[0]!;
}

/** The name of a field, in quotes where it has to be. */
export function keyText(name: string): string {
  return /^[a-z_$][\w$]*$/i.test(name) ? name : JSON.stringify(name);
}

function plainText(type: string, schema: Schema, way: Way): string {
  if (type === 'integer') return 'number';
  if (type === 'array') return listText(schema, way);
  return type === 'object' ? objectText(schema, way) : type;
}

function listText({ prefixItems, items }: Schema, way: Way): string {
  const list = prefixItems
    ? `[${prefixItems.map((part) => typeText(part, way)).join(', ')}]`
    : `${typeText(items || {}, way)}[]`;
  return way === 'sent' ? `(readonly ${list})` : list;
}

function objectText({ properties = {}, required = [], additionalProperties: rest }: Schema, way: Way): string {
  const fields = Object.entries(properties).map(
    ([name, each]) => `${keyText(name)}${required.includes(name) ? '' : '?'}: ${typeText(each, way)}`,
  );
  if (way === 'sent' && rest === true && fields.length === 0) return 'object';
  if (rest === undefined || rest === false) return `{ ${fields.join('; ')} }`;
  return `{ ${[...fields, `[name: string]: ${rest === true ? 'unknown' : typeText(rest, way)}`].join('; ')} }`;
}
