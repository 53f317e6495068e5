import { figureProblem, readFigure } from '#libs/bench/src/index.js';
import type { TypedFigure } from '#libs/bench/src/index.js';
import { resultWords } from '#libs/contract/src/index.js';
import type { TypedResultsBody } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { ResultEntity, SpecimenEntity } from '#libs/records/src/index.js';
import type { BenchFacts } from './bench-facts.js';
import { carrierOf } from './carrier-of.js';
import { resultsNeeded } from './typed-results.js';

/** What somebody typed, as it is kept. @throws InvalidInput naming every key, unit and value that cannot be taken */
export function figuresOf(
  facts: BenchFacts,
  { dimensions }: Pick<SpecimenEntity, 'dimensions'>,
  { results }: TypedResultsBody,
): TypedFigure[] {
  const { method, ask } = facts.work;
  const wanted = resultsNeeded(method, ask).flatMap(({ key, typed }) => (typed ? [key] : []));
  const carrier = carrierOf(facts, dimensions);
  const read = results.map((typed, at) => {
    const field = `results[${at}]`;
    if (!wanted.includes(typed.key)) {
      return fieldProblem({
        field: `${field}.key`,
        found: typed.key,
        allowed: `one of ${wanted.join(', ')}`,
        unit: '',
      });
    }
    const figure = readFigure(typed, resultWords(typed.key, method.testType), field);
    return isProblem(figure) ? figure : (figureProblem(figure, `${field}.value`, carrier) ?? figure);
  });
  refuseIfAny(read.filter(isProblem));
  return read.filter((each): each is TypedFigure => !isProblem(each));
}

function isProblem(read: TypedFigure | FieldProblem): read is FieldProblem {
  return 'sentence' in read;
}

/** @throws InvalidInput naming `why` when a figure is corrected without a reason */
export function refuseUnexplained(
  figures: readonly TypedFigure[],
  there: readonly ResultEntity[],
  why: string | undefined,
): void {
  const corrected = figures.filter(({ key, value }) => there.some((row) => row.key === key && row.value !== value));
  if (corrected.length === 0 || why?.trim()) return;
  const allowed = `a reason, because ${corrected.map(({ key }) => key).join(', ')} was entered before`;
  throw new InvalidInput([fieldProblem({ field: 'why', found: why ?? null, allowed, unit: '' })]);
}
