import type { FieldError, Problem } from '#libs/contract/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { InvalidInput, LabError } from '#libs/errors/src/index.js';

/** By the reason in an error's code, the part after the slash; any other refusal is a conflict with how things stand. */
const STATUS_OF_REASON: Record<string, number> = {
  invalid: 422,
  needed: 401,
  'wrong-credentials': 401,
  forbidden: 403,
  unknown: 404,
  none: 404,
  'too-large': 413,
  'changed-meanwhile': 412,
  'version-needed': 428,
  'too-many': 429,
  unavailable: 503,
};

/** By SQLSTATE (https://www.postgresql.org/docs/current/errcodes-appendix.html); a first part alone stands for its whole class. */
const OF_SQLSTATE: Record<string, [status: number, code: string, sentence: string]> = {
  '23505': [409, 'database/taken', 'Another one with the same name or number exists.'],
  '23P01': [
    409,
    'database/overlap',
    'It overlaps with another in time; nobody and nothing can be in two places at once.',
  ],
  '23503': [
    409,
    'database/still-used',
    'It refers to something that does not exist, or something else still refers to it.',
  ],
  '23514': [422, 'database/not-allowed', 'A figure is outside of what the database allows.'],
  '22': [422, 'database/unreadable', 'A value cannot be kept in the form that it was sent in.'],
  '40': [503, 'database/busy', 'Others changed the same things at the same moment. Try again.'],
  '08': [503, 'database/unavailable', 'The database cannot be reached. Try again in a moment.'],
  '53': [503, 'database/unavailable', 'The database is at its limit. Try again in a moment.'],
  '57': [503, 'database/unavailable', 'The database is restarting. Try again in a moment.'],
};
/**
 * The driver gives no code where a connection breaks while it is used, or none is free in time. Within a transaction a broken
 * connection is released at once, so that the next statement finds it gone.
 */
const BROKEN = [
  'Connection terminated',
  'Client has encountered a connection error',
  'Client was closed and is not queryable',
  'timeout exceeded when trying to connect',
  'Query runner already released',
  'Database connection provided by a query runner was already released',
];
const NOT_REACHED = ['ECONNREFUSED', 'ECONNRESET', 'ETIMEDOUT', 'EPIPE'];

const OF_STATUS: Record<number, string> = {
  400: 'The request cannot be read.',
  404: 'There is nothing here.',
  405: 'This cannot be done here.',
  413: 'This is too large.',
  415: 'This kind of content is not taken here.',
};

/**
 * Turns whatever was thrown into problem details (RFC 9457). What is not ours becomes a plain sentence: no stack, no SQL,
 * nothing of the inside.
 */
export function problemOf(error: unknown, requestId: string): Problem {
  if (error instanceof InvalidInput) return ofInvalidInput(error);
  if (error instanceof LabError) return ofLabError(error);
  const found = ofDatabase(error) ?? ofFramework(error);
  return found ?? told(500, 'server/fault', `Something went wrong here. It was noted under ${requestId}.`);
}

function ofInvalidInput(error: InvalidInput): Problem {
  return { ...told(422, error.code, error.message), errors: error.problems.map(fieldErrorOf) };
}

function fieldErrorOf({ field, found, allowed, unit, sentence }: FieldProblem): FieldError {
  const shown = typeof found === 'string' ? found : (JSON.stringify(found) ?? '');
  return { field, found: shown.slice(0, 200), allowed, ...(unit ? { unit } : {}), sentence };
}

function ofLabError(error: LabError): Problem {
  const reason = error.code.split('/').at(-1)!;
  return { ...told(STATUS_OF_REASON[reason] ?? 409, error.code, error.message), facts: error.facts };
}

function ofDatabase(error: unknown): Problem | null {
  const code =
    (error as { driverError?: { code?: unknown }; code?: unknown } | null)?.driverError?.code ??
    (error as { code?: unknown } | null)?.code;
  if (error instanceof Error && isBroken(error)) return told(...OF_SQLSTATE['08']!);
  if (typeof code !== 'string') return null;
  const known = OF_SQLSTATE[code] ?? (/^[0-9A-Z]{5}$/.test(code) ? OF_SQLSTATE[code.slice(0, 2)] : undefined);
  if (known) return told(...known);
  return NOT_REACHED.includes(code) ? told(...OF_SQLSTATE['08']!) : null;
}

/** TypeORM puts the driver's error into words of its own, its name first. */
function isBroken({ message }: Error): boolean {
  return BROKEN.some((words) => message.replace(/^Error: /, '').startsWith(words));
}

/** Nest's own refusals and those of the body reader carry a status. */
function ofFramework(error: unknown): Problem | null {
  const carried = error as { getStatus?(): number; status?: unknown; expose?: unknown } | null;
  const status = carried?.getStatus?.() ?? carried?.status;
  if (typeof status !== 'number' || status < 400 || status >= 500) return null;
  return told(status, `http/${status}`, OF_STATUS[status] ?? 'The request cannot be served.');
}

function told(status: number, code: string, sentence: string): Problem {
  return { type: `/problems/${code}`, title: TITLES[status] ?? 'Refused', status, detail: sentence };
}

const TITLES: Record<number, string> = {
  401: 'Not signed in',
  403: 'Not allowed',
  404: 'Not found',
  409: 'Not as things stand',
  412: 'Changed meanwhile',
  413: 'Too large',
  422: 'Invalid input',
  428: 'Version needed',
  429: 'Too many tries',
  500: 'Fault of the server',
  503: 'Not available now',
};
