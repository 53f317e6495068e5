/** As far as schemas of OpenAPI 3.1 are used by the API's own description of what it takes. */
export interface Schema {
  $ref?: string;
  type?: string | string[];
  format?: string;
  enum?: unknown[];
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
  minLength?: number;
  maxLength?: number;
  minItems?: number;
  maxItems?: number;
  items?: Schema;
  properties?: Record<string, Schema>;
  required?: string[];
  allOf?: Schema[];
  anyOf?: Schema[];
}

/** A schema whose parts are taken together: one type, and whether it may be null instead. */
export type Resolved = Omit<Schema, '$ref' | 'type' | 'allOf' | 'anyOf'> & {
  type?: string | undefined;
  nullable: boolean;
};

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
export function resolved(schema: Schema, { components }: Description): Resolved {
  const { $ref, allOf = [], anyOf = [], type, ...rest } = schema;
  const parts = [...($ref ? [components.schemas[$ref.split('/').at(-1)!] ?? {}] : []), ...allOf, ...anyOf];
  const within = parts.map((part) => resolved(part, { components, paths: {} }));
  const types = [type ?? []].flat();
  const whole = Object.assign({}, ...within.filter((part) => part.type !== 'null'), rest) as Resolved;
  return {
    ...whole,
    type: types.find((each) => each !== 'null') ?? types[0] ?? whole.type,
    nullable: types.includes('null') || within.some((part) => part.type === 'null'),
  };
}
