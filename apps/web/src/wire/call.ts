import type { FieldError, Problem } from '#libs/contract/src/index.js';
import type { Call } from './api.js';
import { inWords } from './field-words.js';

const ROOT = '/api/v1';

/** The server refused: its problem details say what was found, what is allowed and what to do. */
export class Refused extends Error {
  constructor(readonly problem: Problem) {
    super(detailInWords(problem) || problem.title);
  }

  /** What is wrong, by the path of the field, in words for people. */
  get fields(): Record<string, string> {
    return Object.fromEntries(
      (this.problem.errors ?? []).map(({ field, sentence }: FieldError) => [field, inWords(field, sentence)]),
    );
  }
}

function detailInWords({ detail = '', errors = [] }: Problem): string {
  return errors.reduce((text, { field, sentence }) => text.replace(sentence, () => inWords(field, sentence)), detail);
}

/** The server is still at the first try of an act with this key: ask again in a moment. */
export function isStillAtWork(error: unknown): boolean {
  return error instanceof Refused && error.problem.type === '/problems/idempotency-key/at-work';
}

/** The act was done by an earlier try whose answer was lost for good: what became of it has to be looked up. */
export function wasDoneAlready(error: unknown): boolean {
  return error instanceof Refused && error.problem.type === '/problems/idempotency-key/done-already';
}

/** Nothing came back: the network or the server is away. Whether the server acted is not known. */
export class NoAnswer extends Error {
  constructor(cause: unknown) {
    super('The lab server does not answer.', { cause });
  }
}

export interface CallOptions {
  /** Media type of a file that is sent as it is. */
  type?: string;
  /** Makes a repeated POST harmless: the server acts once per key. */
  key?: string | undefined;
  signal?: AbortSignal;
}

/**
 * Calls the API.
 *
 * @returns the answer's JSON; `undefined` for an empty one
 * @throws {Refused} for an answer that is not a success, {NoAnswer} when none came
 */
export async function call<Answer>(asked: Call<Answer>, options: CallOptions = {}): Promise<Answer> {
  const response = await send(asked, options);
  const text = await response.text().catch((cause: unknown) => {
    if (options.signal?.aborted) throw cause;
    throw new NoAnswer(cause); // the line broke in the middle of the answer
  });
  if (!response.ok) throw new Refused(problemOf(response, text));
  return (text ? JSON.parse(text) : undefined) as Answer;
}

/** A new key for one act of a person. */
export function newKey(): string {
  return crypto.randomUUID?.() ?? `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;
}

/** Where a browser can fetch something by itself: downloads, feeds, pictures. */
export function addressOf({ path }: Call<unknown, 'GET'>): string {
  return `${ROOT}${path}`;
}

async function send(asked: Call<unknown>, options: CallOptions): Promise<Response> {
  const { verb, path, body } = asked;
  const { signal } = options;
  try {
    return await fetch(`${ROOT}${path}`, {
      method: verb,
      headers: headersOf(asked, options),
      body: body instanceof Blob ? body : body === undefined ? null : JSON.stringify(body),
      credentials: 'same-origin',
      // The ETag of an answer is its version for editing; what hangs on it may change without it.
      cache: 'no-store',
      ...(signal ? { signal } : {}),
    });
  } catch (cause) {
    if (signal?.aborted) throw cause;
    throw new NoAnswer(cause);
  }
}

function headersOf({ verb, body, version }: Call<unknown>, { type, key }: CallOptions): Record<string, string> {
  const headers: Record<string, string> = { Accept: 'application/json' };
  if (verb !== 'GET') headers['X-Lab-Page'] = 'yes';
  if (body instanceof Blob) headers['Content-Type'] = type ?? 'application/octet-stream';
  else if (body !== undefined) headers['Content-Type'] = 'application/json';
  if (key) headers['Idempotency-Key'] = key;
  if (version !== undefined) headers['If-Match'] = `"${version}"`;
  return headers;
}

function problemOf(response: Response, text: string): Problem {
  try {
    const problem = JSON.parse(text) as Problem;
    if (typeof problem.title === 'string') return problem;
  } catch {
    // Not JSON: a proxy in between answered; the status is all there is to tell.
  }
  return {
    type: 'about:blank',
    title: 'The server could not do that.',
    status: response.status,
    detail: `The server answered with status ${response.status} and no explanation. Try again; if it stays so, tell the lab manager.`,
  };
}
