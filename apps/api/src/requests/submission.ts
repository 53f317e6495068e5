import { resultWords } from '#libs/contract/src/index.js';
import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { askOf, methodOf } from '#libs/records/src/index.js';
import type { RequestAround } from '#libs/records/src/index.js';
import { batchProblems } from './check-batch.js';

/** Everything that keeps a request from being submitted, by field. */
export function submissionProblems({ request, batches }: RequestAround, nowMs: number): FieldProblem[] {
  const none = batches.length === 0 ? [problem('batches', null, 'one batch of specimens at least')] : [];
  const past = request.dueAt !== null && request.dueAt.getTime() <= nowMs;
  const due = past ? [problem('dueAt', request.dueAt!.toISOString(), 'an instant that is still to come, or none')] : [];
  return [...none, ...due, ...limitProblems(request, batches), ...batches.flatMap(problemsOfBatch)];
}

/** Limits can only be held against a result that somebody wants, in the unit that it comes in. */
function limitProblems({ conformity }: RequestAround['request'], batches: RequestAround['batches']): FieldProblem[] {
  if (conformity === null) return [];
  const wanted = new Set(batches.flatMap(({ batch, method, material }) => askOf(batch, method, material).results));
  const key = String(conformity['resultKey']);
  if (!wanted.has(key))
    return [problem('conformity.resultKey', key, `one of the results asked for: ${[...wanted].join(', ')}`)];
  const units = new Set(
    batches
      .filter(({ batch, method, material }) => askOf(batch, method, material).results.includes(key))
      .map(({ method }) => resultWords(key, method.testType).unit),
  );
  const unit = String(conformity['unit']);
  if (units.size === 1 && units.has(unit)) return [];
  const allowed =
    units.size === 1 ? `the unit of that result: ${[...units].join('')}` : 'one unit for the result in every batch';
  return [problem('conformity.unit', unit, allowed)];
}

function problemsOfBatch({ batch, method, material }: RequestAround['batches'][number], index: number): FieldProblem[] {
  const path = `batches[${index}]`;
  if (method.state === 'retired') {
    return [problem(`${path}.methodId`, method.designation, 'a method that the lab still offers')];
  }
  return batchProblems(methodOf(method), askOf(batch, method, material), batch.ask, `${path}.ask.`);
}

function problem(field: string, found: unknown, allowed: string): FieldProblem {
  return fieldProblem({ field, found, allowed, unit: '' });
}
