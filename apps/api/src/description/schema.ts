/** JSON Schema 2020-12, which OpenAPI 3.1 is written in, as far as the description of the API uses it. */
export interface Schema {
  $ref?: string;
  type?: string | string[];
  format?: string;
  description?: string;
  enum?: unknown[];
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: Schema | boolean;
  items?: Schema | false;
  prefixItems?: Schema[];
  minItems?: number;
  maxItems?: number;
  minLength?: number;
  maxLength?: number;
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
  exclusiveMaximum?: number;
  anyOf?: Schema[];
  oneOf?: Schema[];
  allOf?: Schema[];
}

const SCHEMAS = '#/components/schemas/';

export function referenceTo(name: string): Schema {
  return { $ref: `${SCHEMAS}${name}` };
}

/** The name behind a reference; null where a schema is none. */
export function referred({ $ref }: Schema): string | null {
  return $ref?.startsWith(SCHEMAS) ? $ref.slice(SCHEMAS.length) : null;
}

/** One of these: plain types and choices are drawn together, the rest stands side by side. */
export function oneOfThese(parts: readonly Schema[]): Schema {
  if (parts.length === 1) return parts[0]!;
  const plain = parts.every((part) => part.type !== undefined && Object.keys(part).every((key) => PLAIN.has(key)));
  if (!plain) return { anyOf: [...parts] };
  const types = [...new Set(parts.flatMap(({ type }) => type ?? []))];
  const [type = '', ...more] = types;
  const choices = parts.map((part) => (part.type === 'null' ? [null] : part.enum));
  const given = choices.filter((each) => each !== undefined);
  const format = parts.find((part) => part.format !== undefined)?.format;
  const whole = { type: more.length > 0 ? types : type, ...(format ? { format } : {}) };
  if (given.length === parts.length) return { ...whole, enum: given.flat() };
  const limited = parts.some((part) => part.enum !== undefined || (part.format !== undefined && more.length > 1));
  return limited ? { anyOf: [...parts] } : whole;
}

const PLAIN = new Set(['type', 'enum', 'format']);
