import type { FieldError, Problem } from '#libs/contract/src/index.js';
import type { Call } from './api.js';
import { inWords } from './field-words.js';

const ROOT = '/api/v1';

/** The server refused: its problem details say what was found, what is allowed and what to do. */
export class ApiError extends Error {
  constructor(readonly problem: Problem) {
    super(detailInWords(problem) || problem.title);
  }

  /** Asking again changes nothing: it is not there, or not for this person. */
  get lasting(): boolean {
    return [403, 404].includes(this.problem.status);
  }

  /** What is wrong, field by field; a form puts the name of its field before the rest of the sentence. */
  get refusals() {
    return (this.problem.errors ?? []).map(({ field, sentence }) => ({
      field,
      sentence: inWords(field, sentence),
      rest: field && sentence.startsWith(`${field} `) ? sentence.slice(field.length + 1) : undefined,
    }));
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

/** The server is still working on the first try with this key: try again in a moment. */
export function isStillInProgress(error: unknown): boolean {
  return error instanceof ApiError && error.problem.type === '/problems/idempotency-key/at-work';
}

/** An earlier try made this change and its answer is lost: the result has to be fetched. */
export function wasDoneAlready(error: unknown): boolean {
  return error instanceof ApiError && error.problem.type === '/problems/idempotency-key/done-already';
}

/** No answer came: the network or the server is away. Whether the server made the change is not known. */
export class ConnectionError extends Error {
  constructor(cause: unknown) {
    super('The lab server does not answer.', { cause });
  }
}

export interface CallOptions {
  /** Media type of a file that is sent as it is. */
  type?: string;
  /** Makes a repeated POST harmless: the server makes one change per key. */
  key?: string | undefined;
  signal?: AbortSignal;
}

/**
 * Calls the API.
 *
 * @returns the answer's JSON; `undefined` for an empty one
 * @throws {ApiError} for an answer that is not a success, {ConnectionError} when none came
 */
export async function call<Answer>(request: Call<Answer>, options: CallOptions = {}): Promise<Answer> {
  const response = await send(request, options);
  const text = await response.text().catch((cause: unknown) => {
    if (options.signal?.aborted) throw cause;
    throw new ConnectionError(cause); // the line broke in the middle of the answer
  });
  if (!response.ok) throw new ApiError(problemOf(response, text));
  return (text ? JSON.parse(text) : undefined) as Answer;
}

/** A new key for one change. */
export function newIdempotencyKey(): string {
  return crypto.randomUUID?.() ?? `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;
}

/** Where a browser can fetch something by itself: downloads, feeds, pictures. */
export function urlOf({ path }: Call<unknown, 'GET'>): string {
  return `${ROOT}${path}`;
}

async function send(request: Call<unknown>, options: CallOptions): Promise<Response> {
  const { verb, path, body } = request;
  const { signal } = options;
  try {
    return await fetch(`${ROOT}${path}`, {
      method: verb,
      headers: headersOf(request, options),
      body: body instanceof Blob ? body : body === undefined ? null : JSON.stringify(body),
      credentials: 'same-origin',
      // The ETag of an answer is its version for editing; what is joined to it may change while the version stays.
      cache: 'no-store',
      ...(signal ? { signal } : {}),
    });
  } catch (cause) {
    if (signal?.aborted) throw cause;
    throw new ConnectionError(cause);
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
    // Not JSON: a proxy in between answered; only the status is known.
  }
  return {
    type: 'about:blank',
    title: 'The server could not do that.',
    status: response.status,
    detail: `The server answered with status ${response.status} and no explanation. Try again; if it stays so, tell the lab manager.`,
  };
}
