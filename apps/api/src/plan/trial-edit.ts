import type { TrialEdit } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import type { TrialEditDto } from './plan.dto.js';

type Field = Exclude<keyof TrialEditDto, 'kind'>;

/** Which fields an edit of each kind has. */
const FIELDS: Record<TrialEdit['kind'], readonly Field[]> = {
  move: ['jobId', 'frameId', 'startsAt'],
  unpin: ['jobId'],
  hold: ['jobId', 'why'],
  unhold: ['jobId'],
  'frame-down': ['frameId', 'startsAt', 'endsAt', 'why'],
  'extra-shift': ['frameId', 'personId', 'startsAt', 'endsAt'],
  'extra-item': ['likeItemId'],
  'technician-off': ['personId', 'startsAt', 'endsAt'],
  weight: ['jobId', 'weight'],
};

const LONGEST_SHIFT_MS = 16 * 3_600_000;
const LONGEST_SPAN_MS = 92 * 86_400_000;

/**
 * The edit that was sent, with exactly the fields of its kind.
 *
 * @throws {InvalidInput} naming every field that is missing or does not belong, and a span that has no length or is too long
 */
export function trialEditOf(body: TrialEditDto): TrialEdit {
  const kind = body.kind as TrialEdit['kind'];
  const wanted = FIELDS[kind];
  const given = (Object.keys(body) as (keyof TrialEditDto)[]).filter(
    (key) => key !== 'kind' && body[key] !== undefined,
  );
  const problems = [
    ...wanted.filter((key) => body[key] === undefined).map((field) => problem(field, undefined, `needed for ${kind}`)),
    ...given
      .filter((key) => !wanted.includes(key as Field))
      .map((field) => problem(field, body[field], `nothing: ${kind} has ${wanted.join(', ')}`)),
    ...spanProblems(body, kind),
  ];
  if (problems.length > 0) throw new InvalidInput(problems);
  return Object.fromEntries([['kind', kind], ...wanted.map((key) => [key, body[key]])]) as TrialEdit;
}

function spanProblems({ startsAt, endsAt }: TrialEditDto, kind: TrialEdit['kind']) {
  if (startsAt === undefined || endsAt === undefined) return [];
  const lengthMs = Date.parse(endsAt) - Date.parse(startsAt);
  const longestMs = kind === 'extra-shift' ? LONGEST_SHIFT_MS : LONGEST_SPAN_MS;
  if (lengthMs > 0 && lengthMs <= longestMs) return [];
  return [problem('endsAt', endsAt, `after ${startsAt}, by at most ${longestMs / 3_600_000} h`)];
}

function problem(field: string, found: unknown, allowed: string) {
  return fieldProblem({ field, found, allowed, unit: '' });
}
