import type { TypedResultsBody } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { ResultEntity } from '#libs/records/src/index.js';
import type { BenchFacts } from './bench-facts.js';
import { cellRating } from './cell-rating.js';
import { figureProblem, readTyped, resultsNeeded } from './typed-results.js';
import type { KeptFigure } from './typed-results.js';

/** What somebody typed, as it is kept. @throws InvalidInput naming every key, unit and value that cannot be taken */
export function figuresOf({ work, trainItems }: BenchFacts, { results }: TypedResultsBody): KeptFigure[] {
  const wanted = resultsNeeded(work.method, work.ask).flatMap(({ key, typed }) => (typed ? [key] : []));
  const bounds = cellRating(trainItems, work.needs);
  const read = results.map((typed, at) => {
    if (!wanted.includes(typed.key)) {
      return fieldProblem({
        field: `results[${at}].key`,
        found: typed.key,
        allowed: `one of ${wanted.join(', ')}`,
        unit: '',
      });
    }
    const figure = readTyped(typed, work.method, at);
    return isProblem(figure) ? figure : (figureProblem(figure, at, bounds, work) ?? figure);
  });
  refuseIfAny(read.filter(isProblem));
  return read.filter((each): each is KeptFigure => !isProblem(each));
}

function isProblem(read: KeptFigure | FieldProblem): read is FieldProblem {
  return 'sentence' in read;
}

/** @throws InvalidInput naming `why` when a figure is corrected without a reason */
export function refuseUnexplained(
  figures: readonly KeptFigure[],
  there: readonly ResultEntity[],
  why: string | undefined,
): void {
  const corrected = figures.filter(({ key, value }) => there.some((row) => row.key === key && row.value !== value));
  if (corrected.length === 0 || why?.trim()) return;
  const allowed = `a reason, because ${corrected.map(({ key }) => key).join(', ')} was entered before`;
  throw new InvalidInput([fieldProblem({ field: 'why', found: why ?? null, allowed, unit: '' })]);
}
