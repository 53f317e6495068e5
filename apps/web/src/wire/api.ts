import type { Operations } from '../../../../dist/description/api.js';

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

/** What an operation takes: its parameters by their names, its body, and the version where it asks for one. */
export type Taken<Of extends Name> = Operations[Of]['parameters'] & Body<Of> & Version<Of>;
/** What an operation takes as its body. */
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
  ...[taken]: object extends Taken<Of> ? [taken?: Taken<Of>] : [taken: Taken<Of>]
): Call<AnswerOf<Of>, VerbOf<Of>> {
  const { body, version, ...parameters } = (taken ?? {}) as Loose;
  const [verb, template = ''] = name.split(' ') as [VerbOf<Of>, string?];
  const path = template.replace(/\{(\w+)\}/g, (_, place: string) => encodeURIComponent(String(parameters[place])));
  const asked = Object.entries(parameters).filter(([key]) => !template.includes(`{${key}}`));
  return { verb, path: `${path}${queryOf(asked)}`, body, version };
}

type Plain = string | number | boolean | null | undefined;

function queryOf(asked: readonly (readonly [string, unknown])[]): string {
  const given = asked.flatMap(([key, value]) =>
    ([value].flat() as Plain[]).flatMap((each) => ((each ?? '') === '' ? [] : [[key, String(each)]])),
  );
  return given.length > 0 ? `?${new URLSearchParams(given).toString()}` : '';
}
