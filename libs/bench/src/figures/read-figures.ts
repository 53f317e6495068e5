import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { Carrier } from './figure-bounds.js';
import { figureProblem } from './figure-problem.js';
import { readFigure } from './read-figure.js';
import type { ShownAs } from './read-figure.js';
import type { TypedFigure } from './typed-figure.js';

/** Results as somebody typed them. */
export type Typed = readonly { key: string; value: number; unit: string }[];

/**
 * What somebody typed for a specimen, as it is kept, or every key, unit and value that cannot be taken, by field.
 *
 * @param wanted how each result that is typed is shown, by its key
 */
export function readFigures(
  results: Typed,
  wanted: ReadonlyMap<string, ShownAs>,
  carrier: Carrier,
): { figures: TypedFigure[]; problems: FieldProblem[] } {
  const read = results.map((typed, at) => {
    const field = `results[${at}]`;
    const shown = wanted.get(typed.key);
    if (!shown) {
      const allowed = `one of ${[...wanted.keys()].join(', ')}`;
      return fieldProblem({ field: `${field}.key`, found: typed.key, allowed, unit: '' });
    }
    const figure = readFigure(typed, shown, field);
    return isProblem(figure) ? figure : (figureProblem(figure, `${field}.value`, carrier) ?? figure);
  });
  return {
    figures: read.filter((each): each is TypedFigure => !isProblem(each)),
    problems: read.filter(isProblem),
  };
}

function isProblem(read: TypedFigure | FieldProblem): read is FieldProblem {
  return 'sentence' in read;
}

/** A figure that differs from the one that stands there needs a reason. */
export function unexplainedProblem(
  figures: readonly Pick<TypedFigure, 'key' | 'value'>[],
  there: readonly { key: string; value: number }[],
  why: string | undefined,
): FieldProblem | null {
  const corrected = figures.filter(({ key, value }) => there.some((row) => row.key === key && row.value !== value));
  if (corrected.length === 0 || why?.trim()) return null;
  const allowed = `a reason, because ${corrected.map(({ key }) => key).join(', ')} was entered before`;
  return fieldProblem({ field: 'why', found: why ?? null, allowed, unit: '' });
}
