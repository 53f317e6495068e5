/** As far as OpenAPI 3.0 is used by the API's own description. */
export interface Schema {
  $ref?: string;
  type?: string;
  format?: string;
  enum?: unknown[];
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: boolean;
  minLength?: number;
  maxLength?: number;
  minItems?: number;
  maxItems?: number;
  nullable?: boolean;
  items?: Schema;
  properties?: Record<string, Schema>;
  required?: string[];
  allOf?: Schema[];
}

export interface Parameter {
  name: string;
  in: string;
  required?: boolean;
  schema?: Schema;
}

/** One operation of the description. */
export interface Operation {
  /** Stable: what draws its inputs apart from those of another operation. */
  id: string;
  method: string;
  /** Below `/api/v1`, with its places, e.g. `/requests/{id}`. */
  path: string;
  parameters: Parameter[];
  /** Of a JSON body; null where none is described. */
  body: Schema | null;
  /** It takes bytes instead of JSON. */
  raw: boolean;
}

interface Described {
  operationId: string;
  parameters?: Parameter[];
  requestBody?: { content: Record<string, { schema?: Schema }> };
}

export interface Description {
  paths: Record<string, Record<string, Described>>;
  components: { schemas: Record<string, Schema> };
}

const PREFIX = /^\/api\/v1/;
/** The few that are not below the prefix: an address with this in it is shortened before it is sent. */
export const TO_THE_ROOT = '/../..';

export function operationsOf({ paths }: Description): Operation[] {
  return Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { operationId, parameters = [], requestBody }]) => {
      const json = requestBody?.content['application/json']?.schema ?? null;
      return {
        id: operationId,
        method: method.toUpperCase(),
        path: PREFIX.test(path) ? path.replace(PREFIX, '') : `${TO_THE_ROOT}${path}`,
        parameters,
        body: json,
        raw: requestBody !== undefined && json === null,
      };
    }),
  );
}

/** Follows a reference, and takes what is described in parts for one. */
export function resolved(schema: Schema, { components }: Description): Schema {
  const { $ref, allOf, ...rest } = schema;
  const parts = [...($ref ? [components.schemas[$ref.split('/').at(-1)!] ?? {}] : []), ...(allOf ?? [])];
  return Object.assign({}, ...parts.map((part) => resolved(part, { components, paths: {} })), rest) as Schema;
}
