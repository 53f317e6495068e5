import type { BatchBody, RequestView, SaveRequestBody } from '#libs/contract/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import { figureIn } from '../../ui/form/form-number.js';
import type { Moments } from '../../ui/moments.js';

/** What a request says as a whole, as it stands in the form. */
export interface RequestHead {
  title: string;
  purpose: string;
  teamId: string;
  due: string;
  disposal: NonNullable<SaveRequestBody['disposal']>;
  /** Whether conformity is asked for; what is typed about it stays while it is not. */
  conforms: boolean;
  conformity: {
    resultKey: string;
    lower: string;
    upper: string;
    of: 'each' | 'mean';
    rule: 'simple' | 'guarded';
    specification: string;
  };
}

/** A result that limits can be held against, with the unit that they are in. */
export interface LimitedResult {
  key: string;
  label: string;
  unit: string;
}

const END_OF_DAY = 17;
const NO_LIMITS: RequestHead['conformity'] = {
  ...{ resultKey: '', lower: '', upper: '', specification: '' },
  of: 'each',
  rule: 'simple',
};

export function emptyHead(teamId: string): RequestHead {
  const said = { title: '', purpose: '', teamId, due: '' };
  return { ...said, disposal: 'keep-90-days', conforms: false, conformity: NO_LIMITS };
}

export function headOf(request: RequestView, { toLocalInput }: Moments): RequestHead {
  const { title, purpose, team, dueAt, disposal, conformity } = request;
  const limit = (value: number | null) => (value === null ? '' : String(value));
  return {
    ...{ title, purpose, disposal, teamId: team.id },
    due: toLocalInput(dueAt).slice(0, 10),
    conforms: conformity !== null,
    conformity: conformity
      ? {
          resultKey: conformity.resultKey,
          of: conformity.of,
          rule: conformity.rule,
          specification: conformity.specification,
          lower: limit(conformity.lower),
          upper: limit(conformity.upper),
        }
      : NO_LIMITS,
  };
}

/** What the form itself can tell to be wrong, by its fields. A draft may be late, a request may not. */
export function headProblems(
  { title, teamId, due, conforms, conformity }: RequestHead,
  { fromLocalInput }: Moments,
  nowMs: number,
  isDraft: boolean,
): Record<string, string> {
  const problems: Record<string, string> = {};
  if (!title.trim()) problems['title'] = 'Say in a few words what you want to find out.';
  if (!teamId) problems['teamId'] = 'Choose the team that asks.';
  const dueAt = fromLocalInput(due, END_OF_DAY);
  if (!isDraft && dueAt && Date.parse(dueAt) <= nowMs)
    problems['due'] = 'This day is over. Choose one that is still to come, or none.';
  return conforms ? { ...problems, ...limitProblems(conformity) } : problems;
}

function limitProblems(conformity: RequestHead['conformity']): Record<string, string> {
  const problems: Record<string, string> = {};
  if (!conformity.specification.trim()) problems['conformity.specification'] = 'Name the specification.';
  if (!conformity.lower.trim() && !conformity.upper.trim()) problems['conformity.lower'] = 'Give one limit at least.';
  for (const end of ['lower', 'upper'] as const) {
    const number = conformity[end].trim() ? parseNumber(conformity[end]) : null;
    if (number && 'reason' in number) problems[`conformity.${end}`] = number.reason;
  }
  return problems;
}

/** @param results with the units in which limits are held */
export function requestBody(
  head: RequestHead,
  batches: BatchBody[],
  results: readonly LimitedResult[],
  { fromLocalInput }: Moments,
): SaveRequestBody {
  const { title, purpose, teamId, due, disposal, conforms, conformity } = head;
  const unit = results.find(({ key }) => key === conformity.resultKey)?.unit ?? '';
  const limits = { lower: figureIn(conformity.lower) ?? null, upper: figureIn(conformity.upper) ?? null };
  return {
    ...{ title, purpose, teamId, disposal, batches },
    dueAt: fromLocalInput(due, END_OF_DAY),
    conformity: conforms ? { ...conformity, unit, ...limits } : null,
  };
}
