import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { named, numbersIn, problemOf, readKnown, TARDINESS } from './instance.js';
import type { Instance } from './instance.js';
import { jobsAt } from './set-a.js';

/** Identical machines from the one-machine files beside this set: due dates are divided by the number of machines. */
export function readSetD1(folder: string): Instance[] {
  const known = readKnown(folder);
  return [40, 50].flatMap((size) => {
    const beside = join(folder, '..', 'a-smtwt', `wt${size}.txt`);
    const path = existsSync(beside) ? beside : join(folder, `wt${size}.txt`);
    const figures = numbersIn(readFileSync(path, 'utf8'));
    return [2, 4].flatMap((machines) =>
      Array.from({ length: 25 }, (_, at) => {
        const { work, weight, due } = jobsAt(figures, size, at * 5);
        const rows = Array.from({ length: machines }, () => work);
        const problem = problemOf(
          { work: rows, setup: null, weight, due: due.map((min) => Math.floor(min / machines)) },
          TARDINESS,
        );
        return named(path, known, problem, `wt${size}-${machines}m-${at * 5 + 1}`);
      }),
    );
  });
}
