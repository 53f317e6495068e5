import type { Operations } from './operations.js';

export type Verb = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/** One call of the API, ready to be made. */
export interface Call<Answer, Of extends Verb = Verb> {
  verb: Of;
  /** Below `/api/v1`, with its leading slash and its query. */
  path: string;
  body?: unknown;
  /** Version of what is being edited: the server refuses when somebody changed it meanwhile. */
  version?: number | undefined;
  /** Never there: it carries the type of the answer. */
  answer?: Answer;
}

type Name = keyof Operations;
type VerbOf<Of extends Name> = Of extends `${infer First extends Verb} ${string}` ? First : never;
type Body<Of extends Name> = Operations[Of]['body'] extends undefined ? unknown : { body: Operations[Of]['body'] };
type Version<Of extends Name> = Operations[Of]['versioned'] extends true ? { version: number } : unknown;

/** The arguments of an operation: its parameters by name, its body, and the version if it requires one. */
export type Arguments<Of extends Name> = Operations[Of]['parameters'] & Body<Of> & Version<Of>;
/** The body of an operation. */
export type BodyOf<Of extends Name> = Operations[Of]['body'];
export type AnswerOf<Of extends Name> = Operations[Of]['answer'];

interface Loose {
  body?: unknown;
  version?: number;
  [parameter: string]: unknown;
}

/**
 * A call of an operation of the API as its description has it: a wrong address, a missing parameter or a wrong body does not compile.
 * Parameters that have no place in the address become its query; those that are empty are left out.
 *
 * @param name e.g. `POST /jobs/{id}/tick`
 */
export function api<Of extends Name>(
  name: Of,
  ...[args]: object extends Arguments<Of> ? [args?: Arguments<Of>] : [args: Arguments<Of>]
): Call<AnswerOf<Of>, VerbOf<Of>> {
  const { body, version, ...parameters } = (args ?? {}) as Loose;
  const [verb, template = ''] = name.split(' ') as [VerbOf<Of>, string?];
  const path = template.replace(/\{(\w+)\}/g, (_, place: string) => encodeURIComponent(String(parameters[place])));
  const inQuery = Object.entries(parameters).filter(([key]) => !template.includes(`{${key}}`));
  return { verb, path: `${path}${queryOf(inQuery)}`, body, version };
}

type Plain = string | number | boolean | null | undefined;

function queryOf(parameters: readonly (readonly [string, unknown])[]): string {
  const given = parameters.flatMap(([key, value]) =>
    ([value].flat() as Plain[]).flatMap((each) => ((each ?? '') === '' ? [] : [[key, String(each)]])),
  );
  return given.length > 0 ? `?${new URLSearchParams(given).toString()}` : '';
}
